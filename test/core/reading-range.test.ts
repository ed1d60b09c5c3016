import { expect, test } from 'vitest';
import { readRange, readRangeWithUnit } from '../../src/core/reading-range.js';

const read = (text: string) => {
  const found = readRange(text);
  return 'sentence' in found ? found.sentence : [found.value.amount, found.value.amountTo];
};

test.each([
  ['700', '700', null],
  ['¾', '0.75', null],
  ['3/4', '0.75', null],
  ['1 1/2', '1.5', null],
  ['1½', '1.5', null],
  ['1,5', '1.5', null],
  ['0.75', '0.75', null],
  ['2–3', '2', '3'],
  ['2-3', '2', '3'],
  ['2 - 3', '2', '3'],
  ['2 to 3', '2', '3'],
  ['2 TO 3', '2', '3'],
  ['1½–2', '1.5', '2'],
  ['1/3 to 1/2', '1/3', '0.5'],
  ['1 1/2 - 2 1/4', '1.5', '2.25'],
  ['0,5-0,75', '0.5', '0.75'],
  ['1-1/2', '1.5', null],
  ['1/2-3/4', '0.5', '0.75'],
])('“%s” is %s to %s', (text, amount, amountTo) => expect(read(text)).toEqual([amount, amountTo]));

test.each([
  ['3-2', 'A range goes up, such as 2–3. You entered 3-2.'],
  ['2-2', 'A range goes up, such as 2–3. You entered 2-2.'],
  ['-3', 'A quantity is never below zero. You entered -3.'],
  ['0-3', 'Enter a quantity above zero, such as 700 or 3/4.'],
  ['1,500-2,000', '1,500 can be read two ways. Type 1500, or 1.500.'],
  ['', 'Enter a quantity, such as 700 or 3/4.'],
])('“%s” says what to type', (text, sentence) => expect(read(text)).toBe(sentence));

test('a figure in words, or three ends, is asked for in figures', () => {
  for (const text of ['two to three', '2-3-4', 'some', '2–', 'to'])
    expect(read(text)).toMatch(/^(Enter the quantity in figures|2–)/);
});

test('a unit may stand behind it', () => {
  const said = (text: string) => {
    const found = readRangeWithUnit(text);
    return found && 'value' in found.range
      ? [found.range.value.amount, found.range.value.amountTo, found.unit]
      : found;
  };
  expect(said('700 g')).toEqual(['700', null, 'g']);
  expect(said('2–3 cloves')).toEqual(['2', '3', 'clove']);
  expect(said('2 to 3 tbsp')).toEqual(['2', '3', 'tbsp']);
  expect(said('65 %')).toEqual(['65', null, 'percent']);
  expect(said('65%')).toEqual(['65', null, 'percent']);
  expect(said('1½ fl oz')).toEqual(['1.5', null, 'fl-oz']);
  expect(said('2 x 400 g')).toEqual(['800', null, 'g']);
  expect(said('3 × 1,5 l')).toEqual(['4.5', null, 'l']);
  expect([said('700'), said('2 to 3'), said('g')]).toEqual([undefined, undefined, undefined]);
});

test('so many of one size are what they come to by weight or volume, and nothing by count', () => {
  const by = (text: string, unit: string) => {
    const found = readRange(text, unit);
    return 'sentence' in found ? found.sentence : found.value.amount;
  };
  expect([by('2 x 400', 'g'), by('2x400', 'ml'), by('½ * 3', 'cup')]).toEqual(['800', '800', '1.5']);
  for (const unit of ['tin', 'each', ''])
    expect(by('2 x 400', unit)).toBe(
      'Enter the quantity in figures, such as 700 or 3/4. You entered 2 x 400.',
    );
  for (const text of ['2 x', 'x 2', '2 x 3 x 4', '0 x 400', '2 x some', '999999999999 x 999'])
    expect(readRange(text, 'g'), text).toHaveProperty('sentence');
});
