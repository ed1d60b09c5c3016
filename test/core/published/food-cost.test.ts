import { expect, test } from 'vitest';
import { costOfEvent } from '../../../src/core/costing.js';
import { allocate, minorDigits, toMinor } from '../../../src/core/money.js';
import { Rational } from '../../../src/core/quantity/rational.js';
import { dish, factsOf, food, lines, pack, party } from '../small.js';

const r = Rational.parse;

/** Striploin at 11.95 a kilo, of which 4.6 of 5.2 kg are left when trimmed, or of a yield that is stated. */
const striploin = (edible: string) =>
  factsOf([
    dish('steaks', '1 portion', ['1 kg striploin']),
    dish('steak', '1 portion', ['170 g striploin']),
    food('striploin', { edibleYield: { yield: edible }, ...pack('1 kg at 1195') }),
  ]);
const exactCost = (edible: string) => costOfEvent(party(1, ['steaks']), striploin(edible)).value.exact;

// Worked example of an edible-portion cost: striploin 5.2 kg at 11.95/kg trims to 4.6 kg, EP cost = AP cost / yield:
// 13.5087 a kilo from the weights; 13.50 were the yield first rounded to 88.5 %, so a yield is never rounded.
test('a kilo of trimmed striploin costs 13.51', () => {
  expect(r('4.6').over(r('5.2')).toString()).toBe('23/26');
  expect(exactCost('23/26').over(r('100')).toFixed(4)).toBe('13.5087');
  expect(costOfEvent(party(1, ['steaks']), striploin('23/26')).value.total).toBe(1351);
  expect(exactCost('0.885').over(r('100')).toFixed(2)).toBe('13.50');
});

// The same example: 85 steaks of 170 g are 14.45 kg edible, 16.33 kg as purchased.
test('85 steaks are 14.45 kg edible and 16.33 kg bought', () => {
  const { prepared, bought } = lines(party(85, ['steak']), striploin('23/26')).get('steak/l0')!;
  expect(prepared!.toString()).toBe('14450');
  expect(bought!.value.over(r('1000')).toFixed(2)).toBe('16.33');
});

// Dittmer and Keefe, Principles of Food, Beverage and Labor Cost Controls, example 6.3, read in a copy: a loin of 12 lb
// at 6.65 is 79.80; over 6 lb usable 13.30 a pound, over the 5 lb left when cooked 15.96, and 5 oz of that 4.99. The
// credit for by-products, which makes 11.13 of the 13.30, is no part of a usage cost.
test('a loin of 12 lb at 6.65: 13.30 a usable pound, 15.96 a cooked one, 4.99 for 5 oz', () => {
  const cost = (edible: string, text: string) =>
    costOfEvent(
      party(1, ['plate']),
      factsOf([
        dish('plate', '1 portion', [text]),
        food('loin', { edibleYield: { yield: edible }, ...pack('1 lb at 665') }),
      ]),
    ).value.total;
  expect([cost('6/12', '6 lb loin'), cost('6/12', '1 lb loin')]).toEqual([7980, 1330]);
  expect([cost('5/12', '1 lb loin'), cost('5/12', '5 oz loin')]).toEqual([1596, 499]);
});

// ISO 4217, List One (2024-06-25), read in a copy: minor digits.
test('minor digits of currencies', () => {
  const digits = ['GBP', 'EUR', 'USD', 'JPY', 'KWD', 'HUF', 'IQD', 'ISK', 'XOF', 'TND'].map(minorDigits);
  expect(digits).toEqual([2, 2, 2, 0, 3, 2, 3, 0, 0, 3]);
});

// Invented: three lines of a third of 10.00 are 3.34, 3.33 and 3.33: the penny left goes to the first of equals.
test('a total is split to the penny by the largest remainder', () => {
  const third = r('1000/3');
  expect(allocate(1000, [third, third, third])).toEqual([334, 333, 333]);
  expect(allocate(100, [r('0.5'), r('99.25'), r('0.25')])).toEqual([1, 99, 0]);
  expect(allocate(0, [Rational.zero, Rational.zero])).toEqual([0, 0]);
  expect(allocate(5, [])).toEqual([]);
  expect([toMinor(r('0.5')), toMinor(r('0.4999'))]).toEqual([1, 0]);
});

// Invented: 3 × 100 g of a 300 g pack at 2.99 is exactly one pack, and 0.1 kg and 0.2 kg are exactly 300 g.
test('no rounding noise: three times 100 g are one pack of 300 g', () => {
  const facts = factsOf([
    dish('bowls', '3 portions', ['100 g oats', '0.1 kg oats', '1/10 kg oats']),
    food('oats', pack('300 g at 299')),
  ]);
  const { value } = costOfEvent(party(3, ['bowls']), facts);
  expect(value.exact.toString()).toBe('299');
  expect(value.courses[0]!.dishes[0]!.lines).toEqual([100, 100, 99]);
});
