import { expect, test } from 'vitest';
import { costing } from '../../src/core/sheets/costing.js';
import { eventSummary } from '../../src/core/sheets/event-summary.js';
import { prepList } from '../../src/core/sheets/prep-list.js';
import { scaledRecipe } from '../../src/core/sheets/scaled-recipe.js';
import { dish, factsOf, food, pack, party, steps } from './small.js';

// Two recipes on each of twenty floors, each of both below: a million ways down to the milk. Every sheet is worked out
// once for a recipe, not once for a way.
test.each([
  ['without steps', {}],
  ['with steps', steps({ minutes: 10 }, { minutes: 5, where: 'venue' })],
  ['with losses in cooking', { cookingLoss: '10' }],
])('a deep web of components is no work, %s', (_, more) => {
  const floors = Array.from({ length: 20 }, (_, at) =>
    ['a', 'b'].map((side) => {
      const lines = at < 19 ? [`1 portion @a${at + 1}`, `1 portion @b${at + 1}`] : ['1 g milk'];
      return dish(`${side}${at}`, '1 portion', lines, more);
    }),
  );
  const facts = factsOf([...floors.flat(), food('milk', pack('1 kg at 100'))]);
  const started = performance.now();
  const event = party(1, ['a0']);
  // Each floor takes twice the floor above: the two on the lowest are made 2^18 times each, 2^19 g in all, 0.1p a gram.
  expect(eventSummary(event, facts).value.cost.total).toBe(52429);
  expect(costing(event, facts).value.ingredients[0]!.prepared!.toString()).toBe('524288');
  expect(prepList([event], facts).value.days[0]!.jobs).toBeGreaterThan(38);
  expect(scaledRecipe(facts.recipes.get('a0')!, undefined, facts).value.complete).toBe(true);
  expect(performance.now() - started).toBeLessThan(1500);
});
