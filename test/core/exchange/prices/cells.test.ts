import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { listDay } from '../../../../src/core/exchange/prices/day.js';
import { listFigure, listPrice } from '../../../../src/core/exchange/prices/figure.js';
import { listSize, manyOf, sizeInName } from '../../../../src/core/exchange/prices/size.js';

const price = (text: string, decimal: 'point' | 'comma' = 'point', currency = 'GBP') =>
  listPrice(text, { decimal, currency });
const why = (read: object) => ('sentence' in read ? String(read.sentence) : '');

describe('a price', () => {
  test.each([
    ['3.40', 340],
    ['£3.40', 340],
    ['3.4', 340],
    ['3', 300],
    ['1,234.50', 123450],
    ['GBP 12', 1200],
    ['3.4000', 340],
    ["1'234.50", 123450],
    ['1 234.50', 123450],
    ['.50', 50],
  ] as const)('%s with a point', (text, value) => expect(price(text)).toEqual({ value }));
  test.each([
    ['3,40', 340],
    ['1.234,50', 123450],
    ['1.234', 123400],
    ['12 €', 1200],
    ['1 234,50', 123450],
  ] as const)('%s with a comma', (text, value) => expect(price(text, 'comma', 'EUR')).toEqual({ value }));

  test('“1,234” is what the list says it is: with a point a thousand, with a comma finer than pennies', () => {
    expect(price('1,234')).toEqual({ value: 123400 });
    expect(why(price('1,234', 'comma'))).toBe('GBP has 2 figures after the comma, and “1,234” has more.');
    expect(price('1,234', 'comma', 'KWD')).toEqual({ value: 1234 });
  });
  test.each([
    ['', 'There is no price.'],
    ['POA', 'There is no price, only “POA”.'],
    ['0', 'The price is 0: nothing is free.'],
    ['0.00', 'The price is 0: nothing is free.'],
    ['-3.40', 'The price “-3.40” is below zero.'],
    ['(3.40)', 'below zero'],
    ['three', 'The price “three” is not a figure.'],
    ['3.405', 'GBP has 2 figures after the point'],
    ['€3.40', 'is in EUR'],
    ['3,40', 'has a comma before its pennies, and this list a point'],
    ['1e5', 'not a figure'],
    ['9'.repeat(13), 'not a figure'],
  ])('“%s” is refused', (text, sentence) => expect(why(price(text))).toContain(sentence));
});

describe('a pack size', () => {
  test.each([
    ['2.5 kg', '2.5 kg'],
    ['10KG', '10 kg'],
    ['6x400g', '2.4 kg'],
    ['6 x 400 g tins', '2.4 kg'],
    ['4 x 6 x 330ml', '7.92 l'],
    ['12 x 75cl', '900 cl'],
    ['1 ltr', '1 l'],
    ['per kg', '1 kg'],
    ['EA', '1 each'],
    ["12's", '12 each'],
    ['case of 60', '60 each'],
    ['case of 6 x 1 l', '6 l'],
    ['½ kg', '0.5 kg'],
    ['1/2 kg', '0.5 kg'],
    ['dozen', '1 dozen'],
    ['5 lb', '5 lb'],
    ['16 fl oz', '16 fl-oz'],
    ['2.5KG BAG', '2.5 kg'],
    ['24 pk', '24 each'],
    ['1 tin', '1 tin'],
    ['1,000 g', '1 kg'],
    ['25 KGM', '25 kg'],
  ])('“%s”', (text, held) => {
    const read = listSize(text, 'point');
    expect('value' in read && `${read.value.amount} ${read.value.unit}`).toBe(held);
  });
  test.each(['sack', '12', '', '0 kg', '1kg-2kg', '6 x A10', 'A10 tin', '5 kg box of 12', '2,5 kg'])(
    '“%s” is not guessed at',
    (text) => expect(listSize(text, 'point')).toHaveProperty('sentence'),
  );
  test('a decimal comma; several in a pack; a size within the name', () => {
    expect(listSize('2,5 kg', 'comma')).toEqual({ value: { amount: '2.5', unit: 'kg' } });
    expect(manyOf({ amount: '400', unit: 'g' }, '6', 'point')).toEqual({
      value: { amount: '2.4', unit: 'kg' },
    });
    expect(sizeInName('Butter unsalted 40 x 250g', 'point')).toEqual({ amount: '10', unit: 'kg' });
    expect(sizeInName('Number 1 apples', 'point')).toBeUndefined();
  });
});

test('a day: which comes first is the list’s; what is to come or no day is refused', () => {
  const day = (text: string, days: 'day-first' | 'month-first' = 'day-first') =>
    listDay(text, { days, today: '2026-12-20' });
  for (const text of ['4/12/2026', '04.12.26', '2026-12-04', '20261204', '4 Dec 2026', '4/12/2026 00:00'])
    expect(day(text)).toEqual({ value: '2026-12-04' });
  expect(day('4/12/2026', 'month-first')).toEqual({ value: '2026-04-12' });
  expect(why(day('21/12/2026'))).toBe('The date “21/12/2026” is still to come.');
  for (const text of ['31/2/2026', 'soon', '4 Dec', '13/13/2026'])
    expect(why(day(text))).toContain('is not a day');
});

test('a figure reads one way under each sign, and no cell makes a reader fail', () => {
  fc.assert(
    fc.property(fc.nat(99_999_999), fc.nat(99), (whole, pennies) => {
      const grouped = whole.toLocaleString('en-GB');
      const end = String(pennies).padStart(2, '0');
      const point = listFigure(`${grouped}.${end}`, 'point');
      expect(point).toBe(listFigure(`${grouped.replaceAll(',', '.')},${end}`, 'comma'));
      expect(point).toBe(listFigure(`${whole}.${end}`, 'point'));
    }),
  );
  fc.assert(
    fc.property(fc.string({ maxLength: 30 }), (text) => {
      for (const decimal of ['point', 'comma'] as const) {
        expect(listSize(text, decimal)).toBeTypeOf('object');
        expect(price(text, decimal)).toBeTypeOf('object');
      }
      expect(listDay(text, { days: 'day-first', today: '2026-01-01' })).toBeTypeOf('object');
    }),
    { numRuns: 500 },
  );
});
