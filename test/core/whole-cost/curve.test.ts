import fc from 'fast-check';
import { expect, test } from 'vitest';
import { costLines } from '../../../src/core/facts/cost-line.js';
import type { Event } from '../../../src/core/facts/event.js';
import { byKey, type Facts } from '../../../src/core/facts/facts.js';
import { wholeCost } from '../../../src/core/whole-cost/cost-of-party.js';
import { curveOf } from '../../../src/core/whole-cost/curve.js';
import { withHeadCount } from '../../../src/core/whole-cost/head-count.js';
import type { CostView } from '../../../src/core/whole-cost/whole-cost.js';
import { anyCostLines } from '../../arbitraries/costs.js';
import { exampleKitchen } from '../../world.js';
import { anyKitchen } from '../kitchens.js';

const views: CostView[] = ['used', 'bought'];

const equalsAlone = (event: Event, facts: Facts, range: { from: number; to: number }, beside: Event[]) => {
  for (const view of views)
    for (const point of curveOf(event, facts, view, range, beside).points) {
      const alone = wholeCost(withHeadCount(event, point.guests), facts, view, beside);
      const { guests, exact, total, aGuest, complete, food } = alone;
      expect(point.exact.toString()).toBe(exact.toString());
      expect([point.guests, point.total, point.aGuest, point.complete]).toEqual([
        guests,
        total,
        aGuest,
        complete,
      ]);
      expect(point.food.exact.toString()).toBe(food.exact.toString());
      expect(point.food.complete).toBe(food.complete);
    }
};

test('the curve is what each head-count costs worked out alone, in both views, alone and shopped for together', () => {
  const anyRange = fc.tuple(fc.integer({ min: 1, max: 200 }), fc.nat(3));
  fc.assert(
    fc.property(
      anyKitchen,
      anyCostLines,
      anyRange,
      fc.boolean(),
      ({ facts, events }, costs, [from, more], together) => {
        const [first, ...others] = events.map((event) => ({ ...event, costs }));
        equalsAlone(first!, facts, { from, to: from + more }, together ? others : []);
      },
    ),
    { numRuns: 150 },
  );
});

test('so it is of the example parties, from ten guests to a hundred and fifty', () => {
  const { events, kitchen, ...lists } = exampleKitchen();
  const facts = {
    kitchen,
    places: byKey(lists.places),
    ingredients: byKey(lists.ingredients),
    recipes: byKey(lists.recipes),
  };
  const costs = costLines.parse([
    { key: 'cooking', name: 'Cooking', kind: 'hands', by: { rate: 1600, hours: 'cooking' } },
    { key: 'serving', name: 'Serving', kind: 'hands', by: { rate: 1250, hours: '4.5', guestsEach: 20 } },
    { key: 'ovens', name: 'Ovens', kind: 'energy', by: { rate: 90, hours: 'ovens' } },
    { key: 'crates', name: 'Crates', kind: 'hire', by: { step: 1350, holds: 25, each: '2', spare: '10' } },
    { key: 'spare', name: 'Contingency', kind: 'contingency', by: { percent: '3', of: 'costs' } },
  ]);
  for (const event of events.map((one) => ({ ...one, costs })))
    equalsAlone(event, facts, { from: 10, to: 150 }, events);
});
