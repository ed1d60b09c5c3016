import { expect, test } from 'vitest';
import { costing } from '../../src/core/sheets/costing.js';
import { eventSummary } from '../../src/core/sheets/event-summary.js';
import { prepList } from '../../src/core/sheets/prep-list.js';
import { scaledRecipe } from '../../src/core/sheets/scaled-recipe.js';
import { dish, factsOf, food, pack, party, steps } from './small.js';

// Two recipes on each of 26 floors, each of both below: 33 million ways down to the milk. Every sheet is worked out
// once for a recipe, not once for a way.
test.each([
  ['without steps', {}],
  ['with steps', steps({ minutes: 10 }, { minutes: 5, where: 'venue' })],
  ['with losses in cooking', { cookingLoss: '10' }],
])('a deep web of components is no work, %s', (_, more) => {
  const floors = Array.from({ length: 26 }, (_, at) =>
    ['a', 'b'].map((side) => {
      const lines = at < 25 ? [`1 portion @a${at + 1}`, `1 portion @b${at + 1}`] : ['1 g milk'];
      return dish(`${side}${at}`, '1 portion', lines, more);
    }),
  );
  const facts = factsOf([...floors.flat(), food('milk', pack('1 kg at 100'))]);
  const started = performance.now();
  const event = party(1, ['a0']);
  // Each floor is made twice as often as the one above: on the lowest 2^25 times in all, a gram of milk each, at 0.1p.
  expect(eventSummary(event, facts).value.cost.total).toBe(3_355_443);
  expect(costing(event, facts).value.ingredients[0]!.prepared!.toString()).toBe(String(2 ** 25));
  expect(prepList([event], facts).value.days[0]!.jobs).toBeGreaterThan(50);
  expect(scaledRecipe(facts.recipes.get('a0')!, undefined, facts).value.complete).toBe(true);
  expect(performance.now() - started).toBeLessThan(2000);
});
