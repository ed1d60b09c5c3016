import { expect, test } from 'vitest';
import { Rational } from '../../../src/core/quantity/rational.js';
import { foodCostOf, marginOf, priceForFoodCost, priceForMargin } from '../../../src/core/selling/price.js';
import { selling } from '../../../src/core/selling/selling.js';
import { costs, kitchenOf, priced } from '../selling/sold.js';

const r = Rational.parse;
const kitchen = kitchenOf();

const aGuest = (by: object, whole: string, food?: string) =>
  selling(priced(1, { by }), costs(whole, food), kitchen).aGuest;

// A published worked example of a food cost per cent, its title not at hand: 2.13 / 5.95 = 35.8 per cent.
test('food of 2.13 in a price of 5.95 is 35.8 per cent', () => {
  expect(foodCostOf(r('213'), 595)?.toFixed(1)).toBe('35.8');
  const { foodCost } = selling(priced(1, { by: { aGuest: 595 } }), costs('213'), kitchen);
  expect(foodCost?.toFixed(1)).toBe('35.8');
});

// Food-service management textbook, supplement of 2025, chapter 17, Generating Revenue and Cost Containment, table 17.6,
// read in a copy: a portion of 1.50 at 35 per cent is sold at 4.29. By the factor that stands below it, 100 / 35 rounded
// to 2.9, it would be 4.35. Gisslen, Professional Cooking, 2014, "Food Cost Percentages", read in a copy: 1.60 at 40 per
// cent is 4.00.
test('food of 1.50 that is to be 35 per cent is sold at 4.29, not at 4.35', () => {
  expect(priceForFoodCost(r('150'), '35')?.toFixed(4)).toBe('428.5714');
  expect([aGuest({ foodCost: '35' }, '150'), aGuest({ foodCost: '40' }, '160')]).toEqual([429, 400]);
});

// A published worked example of the prime cost method, its title not at hand: food 5.19 and direct labour 5.00, times two,
// 20.38; twice its prime cost leaves half of it. Controlling Costs in Foodservice, Goodheart-Willcox, 2014, chapter 2,
// page 25, read in a copy: salmon 3.75, wages 2.00 and benefits 0.40 are 6.15, to be 50 per cent of the price: 12.30.
test('a prime cost of 10.19 times two is 20.38, one of 6.15 that is to be half is 12.30', () => {
  expect(priceForMargin(r('519').plus(r('500')), '50')?.toString()).toBe('2038');
  expect([aGuest({ margin: '50' }, '1019', '519'), aGuest({ margin: '50' }, '615', '375')]).toEqual([
    2038, 1230,
  ]);
});

// Published worked examples of a contribution margin, their title not at hand: 23.65 less 7.50 of food leaves 16.15, and
// 16.45 less 5.20 leaves 11.25.
test('what food leaves of a price: 16.15 of 23.65, 11.25 of 16.45', () => {
  const left = (price: number, food: string) =>
    marginOf(r(food), price)?.times(Rational.of(price, 100)).toString();
  expect([left(2365, '750'), left(1645, '520')]).toEqual(['1615', '1125']);
});

// ISO 4217, List One (2024-06-25): JPY 0 minor digits, GBP 2, KWD 3. A cost of 1000 at a margin of 30 per cent asks for
// 1428.57: in yen 1,429; the same figures in pence are 14.29 pounds, in fils 1.429 dinar.
test('a price goes up to the minor unit, whatever its digits', () => {
  for (const currency of ['JPY', 'GBP', 'KWD'])
    expect(selling(priced(1, { by: { margin: '30' } }), costs('1000'), kitchenOf({ currency })).aGuest).toBe(
      1429,
    );
});
