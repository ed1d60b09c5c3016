import fc from 'fast-check';
import { expect, test } from 'vitest';
import { event } from '../../src/core/facts/event.js';
import { byKey, type Facts } from '../../src/core/facts/facts.js';
import { dishesSold, menuEngineering, type Sold } from '../../src/core/menu-engineering.js';
import { Rational, sum } from '../../src/core/quantity/rational.js';
import { exampleKitchen } from '../world.js';

const r = Rational.of;
const sold = (key: string, portions: number, price: number, cost: number): Sold => ({
  key,
  name: key,
  portions: r(portions),
  income: r(portions * price),
  cost: r(portions * cost),
});

// The rule: Kasavana, M. L. and Smith, D. I., Menu Engineering: A Practical Guide to Menu Analysis, 1982 (the 70 per
// cent from memory); its worksheet as in Dittmer and Keefe, Principles of Food, Beverage, and Labor Cost Controls, 9th
// ed. 2009, ch. 11: F > O and C > Q, Q = (1 / dishes) × 0.7, O = all margins / all sold (read in lecture slides).
// The margins 16.15 and 11.25 are of the strip steak and the chicken of the same book (23.65 − 7.50, 16.45 − 5.20); how
// many were sold, and the two other dishes, are invented.
// 100, 140, 20 and 40 sold of 300; margins 1615 × 100 + 1125 × 140 + 1700 × 20 + 900 × 40 = 389000, over 300 = 1296.67.
// An even share is 25 per cent, 70 per cent of that 17.5; they have 33.3, 46.7, 6.7 and 13.3.
test('stars, plowhorses, puzzles and dogs, by the mean margin and 70 per cent of an even share', () => {
  const { dishes, meanMargin, popularFrom } = menuEngineering([
    sold('strip-steak', 100, 2365, 750),
    sold('chicken', 140, 1645, 520),
    sold('salmon', 20, 2500, 800),
    sold('pasta', 40, 1400, 500),
  ]);
  expect(meanMargin?.toFixed(2)).toBe('1296.67');
  expect(popularFrom?.toString()).toBe('17.5');
  expect(dishes.map((dish) => [dish.key, dish.margin.toString(), dish.mix.toFixed(1), dish.class])).toEqual([
    ['strip-steak', '1615', '33.3', 'star'],
    ['chicken', '1125', '46.7', 'plowhorse'],
    ['pasta', '900', '13.3', 'dog'],
    ['salmon', '1700', '6.7', 'puzzle'],
  ]);
});

test('what stands at the very line is not above it', () => {
  const alike = menuEngineering([sold('a', 10, 500, 200), sold('b', 10, 500, 200)]);
  expect(alike.dishes.map((dish) => dish.class)).toEqual(['plowhorse', 'plowhorse']);
  // 35 of 100 is 70 per cent of an even share of 50.
  const { dishes } = menuEngineering([sold('a', 35, 500, 200), sold('b', 65, 500, 300)]);
  expect(dishes.find(({ key }) => key === 'a')?.class).toBe('puzzle');
  expect(menuEngineering([])).toMatchObject({ dishes: [], meanMargin: undefined });
});

test('shares come to a hundred, and some dish reaches the mean margin', () => {
  const any = fc.array(fc.tuple(fc.integer({ min: 1, max: 999 }), fc.nat(5000), fc.nat(3000)), {
    minLength: 1,
    maxLength: 12,
  });
  fc.assert(
    fc.property(any, (list) => {
      const { dishes, meanMargin } = menuEngineering(
        list.map(([n, price, cost], i) => sold(`d${i}`, n, price, cost)),
      );
      expect(sum(dishes.map(({ mix }) => mix)).toString()).toBe('100');
      expect(dishes.some(({ margin }) => margin.compare(meanMargin!) >= 0)).toBe(true);
      expect(dishes.some(({ popular }) => popular)).toBe(true);
    }),
  );
});

const kitchen = exampleKitchen();
const facts: Facts = {
  kitchen: kitchen.kitchen,
  places: byKey(kitchen.places),
  ingredients: byKey(kitchen.ingredients),
  recipes: byKey(kitchen.recipes),
};
const tea = kitchen.events.find(({ key }) => key === 'birthday-tea')!;
const priced = (prices: Record<string, number>, afterwards: object | null = null) =>
  event.parse({
    ...tea,
    afterwards,
    courses: tea.courses.map((course) => ({
      ...course,
      dishes: course.dishes.map((dish) => ({ ...dish, price: prices[dish.key] ?? null })),
    })),
  });

// 38 tartlets made, 11 left: 27 sold at 2.50 where that is noted, and all 38 at 3.00 of the party that noted nothing.
test('sold is what was eaten where that is noted, else what was made; one recipe over several parties is one dish', () => {
  const noted = priced({ 'leek-tartlets': 250 }, { left: [{ dish: 'leek-tartlets', portions: '11' }] });
  const {
    sold: all,
    apart,
    noted: eaten,
    made,
  } = dishesSold([noted, priced({ 'leek-tartlets': 300 })], facts);
  expect(all.map(({ key, portions, income }) => [key, portions.toString(), income.toString()])).toEqual([
    ['leek-tartlets', '65', String(27 * 250 + 38 * 300)],
  ]);
  expect([eaten, made]).toEqual([1, 1]);
  expect(apart.map(({ key, why }) => [key, why])).toContainEqual(['hummus', 'no-price']);
  expect(apart.map(({ key }) => key)).not.toContain('leek-tartlets');
});

test('a dish whose cost is not known is not judged, and says so', () => {
  const noPrices = {
    ...facts,
    ingredients: byKey(kitchen.ingredients.map((one) => ({ ...one, packs: [] }))),
  };
  const { sold: none, apart } = dishesSold([priced({ shortbread: 100 })], noPrices);
  expect(none).toEqual([]);
  expect(apart.find(({ key }) => key === 'shortbread')?.why).toBe('no-cost');
});
