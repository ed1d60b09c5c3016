import { expect, test } from 'vitest';
import { Rational } from '../../../src/core/quantity/rational.js';
import { foodCostOf, marginOf, priceForFoodCost, priceForMargin } from '../../../src/core/selling/price.js';
import { selling } from '../../../src/core/selling/selling.js';
import { costs, kitchenOf, priced } from '../selling/sold.js';

const r = Rational.parse;
const kitchen = kitchenOf();

// Dittmer and Keefe, Principles of Food, Beverage, and Labor Cost Controls, the chapters on costs and on menu pricing,
// figures read in a copy: food of 2.13 in a dish sold at 5.95 is a food cost of 35.8 per cent.
test('food of 2.13 in a price of 5.95 is 35.8 per cent', () => {
  expect(foodCostOf(r('213'), 595)?.toFixed(1)).toBe('35.8');
  expect(selling(priced(1, { by: { aGuest: 595 } }), costs('213'), kitchen).foodCost?.toFixed(1)).toBe(
    '35.8',
  );
});

// The same: 1.50 of food at 35 per cent is sold at 4.29; by the factor 1 / 35 % = 2.857, rounded to 2.9, it would be 4.35.
test('food of 1.50 that is to be 35 per cent is sold at 4.29, not at 4.35', () => {
  expect(priceForFoodCost(r('150'), '35')?.toFixed(4)).toBe('428.5714');
  expect(selling(priced(1, { by: { foodCost: '35' } }), costs('150'), kitchen).aGuest).toBe(429);
  expect(r('150').times(r('2.9')).toString()).toBe('435');
});

// The same, prime cost method: food 5.19 and direct labour 5.00, times two: 20.38. Twice its prime cost leaves half of it.
test('a prime cost of 10.19 times two is 20.38', () => {
  expect(priceForMargin(r('519').plus(r('500')), '50')?.toString()).toBe('2038');
  expect(selling(priced(1, { by: { margin: '50' } }), costs('1019', '519'), kitchen).aGuest).toBe(2038);
});

// The same, contribution margins: 23.65 less 7.50 of food leaves 16.15, 16.45 less 5.20 leaves 11.25.
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
