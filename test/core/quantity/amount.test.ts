import fc from 'fast-check';
import { expect, test } from 'vitest';
import { amount } from '../../../src/core/facts/common.js';
import { exact, readAmount } from '../../../src/core/quantity/amount.js';
import { Rational } from '../../../src/core/quantity/rational.js';

const read = (text: string) => {
  const answer = readAmount(text);
  return 'amount' in answer ? answer.amount : answer.sentence;
};

test.each([
  ['3/4', '0.75'],
  ['¾', '0.75'],
  ['1 ½', '1.5'],
  ['1½', '1.5'],
  ['1 1/2', '1.5'],
  ['1,5', '1.5'],
  ['0,500', '0.5'],
  ['.5', '0.5'],
  ['2 ⅓', '7/3'],
  ['1⁄3', '1/3'],
  [' 700 ', '700'],
  ['0.750', '0.75'],
])('%s is %s', (text, value) => {
  expect(read(text)).toBe(value);
});

test.each([
  ['', 'Enter a quantity, such as 700 or 3/4.'],
  ['-3', 'A quantity is never below zero. You entered -3.'],
  ['1,500', '1,500 can be read two ways. Type 1500, or 1.500.'],
  ['2–3', '2–3 is two figures. Type one of them, 2 or 3.'],
  ['1/2', '0.5'],
  ['3/0', '3/0 has nothing below the line. Enter a fraction such as 3/4.'],
  ['1/2/3', "1/2/3 can't be read as one figure. Enter it as 700, 0.75 or 1 1/2."],
  ['1.5 1/2', "1.5 1/2 can't be read as one figure. Enter it as 700, 0.75 or 1 1/2."],
  ['to taste', 'Enter the quantity in figures, such as 700 or 3/4. You entered to taste.'],
  ['a pinch', 'Enter the quantity in figures, such as 700 or 3/4. You entered a pinch.'],
  ['juice of 1 lemon', 'Enter the quantity in figures, such as 700 or 3/4. You entered juice of 1 lemon.'],
  ['2 x 400', 'Enter the quantity in figures, such as 700 or 3/4. You entered 2 x 400.'],
])('%s is answered: %s', (text, sentence) => {
  expect(read(text)).toBe(sentence);
});

test('whatever is read can be kept, and reads back as the same figure', () => {
  const typed = fc.oneof(
    fc.string({ unit: fc.constantFrom(...'0123456789./, ½⅓-–'), maxLength: 12 }),
    fc
      .tuple(fc.nat(999_999_999), fc.nat(999_999_999), fc.nat(999_999_999))
      .map(([a, b, c]) => `${a} ${b}/${c}`),
    fc.tuple(fc.nat(), fc.nat(2 ** 40)).map(([a, b]) => `${a}.${b}`),
  );
  fc.assert(
    fc.property(typed, (text) => {
      const answer = readAmount(text);
      if ('sentence' in answer) return;
      expect(amount.safeParse(answer.amount).success, `${text} → ${answer.amount}`).toBe(true);
      expect(read(answer.amount)).toBe(answer.amount);
      expect(exact(answer.amount).equals(Rational.parse(answer.amount))).toBe(true);
    }),
    { numRuns: 3000 },
  );
});

// 1/1024 ends as a decimal only after ten places, one more than is kept.
test('a figure finer or larger than is kept is refused, not cut', () => {
  for (const text of ['1/1024', '999999999 2/3', '1234567890123', '0.1234567891'])
    expect(readAmount(text), text).toHaveProperty('sentence');
});
