import fc from 'fast-check';
import { expect, test } from 'vitest';
import { event as eventOf } from '../../../src/core/facts/event.js';
import { byKey, type Facts } from '../../../src/core/facts/facts.js';
import { whatChanged } from '../../../src/core/quoting/what-changed.js';
import { exampleKitchen } from '../../world.js';
import { quoteOf } from '../quoting/quoted.js';

/** The example kitchen with every price of today another. */
const dearer = (facts: Facts, factor: number): Facts => ({
  ...facts,
  ingredients: byKey(
    [...facts.ingredients.values()].map((one) => ({
      ...one,
      packs: one.packs.map((pack) => ({
        ...pack,
        prices: pack.prices.map((price) => ({ ...price, price: Math.ceil((price.price * factor) / 10) })),
      })),
    })),
  ),
});

test('no price of today moves an issued quote', () => {
  const { kitchen, places, ingredients, recipes, events } = exampleKitchen();
  const facts: Facts = {
    kitchen,
    places: byKey(places),
    ingredients: byKey(ingredients),
    recipes: byKey(recipes),
  };
  fc.assert(
    fc.property(
      fc.constantFrom(...events),
      fc.integer({ min: 11, max: 40 }),
      fc.nat(9000),
      (was, factor, aGuest) => {
        const event = eventOf.parse({ ...was, state: 'quoted', served: null, price: { by: { aGuest } } });
        const quote = quoteOf(event, facts);
        const kept = structuredClone(quote);
        const before = whatChanged(quote, event, facts);
        const after = whatChanged(quote, event, dearer(facts, factor));
        expect(quote).toEqual(kept);
        expect(after.then).toEqual(before.then);
        expect(before.now.net).toBe(after.now.net);
        expect(before.moved).toEqual([]);
        expect(after.now.cost.exact.compare(before.now.cost.exact)).toBeGreaterThanOrEqual(0);
        const used = before.then!.cost.food;
        if (used.complete && used.exact.sign > 0) {
          expect(after.moved.length).toBeGreaterThan(0);
          expect(after.now.cost.exact.compare(before.now.cost.exact)).toBe(1);
        }
      },
    ),
    { numRuns: 25 },
  );
});
