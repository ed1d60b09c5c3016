import { expect, test } from 'vitest';
import { event } from '../../src/core/facts/event.js';
import { byKey, type Facts } from '../../src/core/facts/facts.js';
import { ingredient } from '../../src/core/facts/ingredient.js';
import { recipe } from '../../src/core/facts/recipe.js';
import { fewer } from '../../src/core/fewer.js';
import { exampleKitchen } from '../world.js';

/** Invented: cheese by the kilo at 10.00, a tenth of a kilo a guest. */
const cheese = ingredient.parse({
  key: 'cheese',
  name: 'Cheese',
  edibleYield: { yield: '1' },
  packs: [
    {
      key: 'kilo',
      size: { amount: '1', unit: 'kg' },
      prices: [{ key: 'p', date: '2026-01-01', price: 1000 }],
    },
  ],
});
const board = recipe.parse({
  key: 'board',
  name: 'Board',
  yield: { portions: '10' },
  lines: [{ key: 'l1', amount: '1', unit: 'kg', item: { ingredient: 'cheese' } }],
});
const kitchen = exampleKitchen();
const facts: Facts = {
  kitchen: kitchen.kitchen,
  places: byKey(kitchen.places),
  ingredients: byKey([cheese]),
  recipes: byKey([board]),
};
const party = (key: string, guests: number) =>
  event.parse({
    key,
    name: key,
    date: '2026-12-05',
    place: 'home',
    state: 'confirmed',
    groups: [{ key: 'all', name: 'All', guests }],
    courses: [{ key: 'c', name: 'Cheese', time: '20:00', dishes: [{ key: 'd', recipe: 'board' }] }],
    costs: [{ key: 'hall', name: 'Hall', kind: 'venue', by: { fixed: 5000 } }],
  });

// 14 and 6 guests use 2 kg together, two packs, 14.00 and 6.00. Called off, the other needs a pack of its own: 10.00.
test('called off: the shopping shrinks by a pack, and the other party pays the rest of the one they shared', () => {
  const found = fewer(party('large', 14), 0, [party('small', 6)], facts);
  expect(found.food).toEqual({
    before: { total: 1400, complete: true },
    after: { total: 0, complete: true },
  });
  expect(found.whole.before.total).toBe(6400);
  expect(found.beside).toMatchObject([
    { event: { key: 'small' }, before: { total: 600 }, after: { total: 1000 } },
  ]);
  expect([found.shopping.before.total, found.shopping.after.total]).toEqual([2000, 1000]);
  expect(found.packs).toMatchObject([{ ingredient: { key: 'cheese' }, before: 2, after: 1 }]);
});

// 12 and 6 guests use 1.8 kg, still two packs: 12 of 18 parts are 13.33.
test('fewer guests that save no pack shrink no shopping, and shares move by what each uses', () => {
  const found = fewer(party('large', 14), 12, [party('small', 6)], facts);
  expect(found.guests).toEqual({ before: 14, after: 12 });
  expect([found.food.after.total, found.beside[0]?.after.total]).toEqual([1333, 667]);
  expect([found.shopping.before.total, found.shopping.after.total]).toEqual([2000, 2000]);
  expect(found.packs).toEqual([]);
});

test('alone, the whole of it goes; a price that is missing leaves it not known', () => {
  expect(fewer(party('one', 10), 0, [], facts).shopping.after).toEqual({ total: 0, complete: true });
  const none = { ...facts, ingredients: byKey([{ ...cheese, packs: [] }]) };
  expect(fewer(party('one', 10), 5, [], none).shopping.before.complete).toBe(false);
});
