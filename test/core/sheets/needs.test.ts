import { expect, test } from 'vitest';
import { byKey } from '../../../src/core/facts/facts.js';
import { Rational } from '../../../src/core/quantity/rational.js';
import { costing } from '../../../src/core/sheets/costing.js';
import { needsOf } from '../../../src/core/sheets/needs.js';
import { exampleKitchen } from '../../world.js';

// What three parties need together is what each needs by itself, added up: invented data, the example kitchen.
const { kitchen, events, ...lists } = exampleKitchen();
const facts = {
  kitchen,
  places: byKey(lists.places),
  ingredients: byKey(lists.ingredients),
  recipes: byKey(lists.recipes),
};
const { value: together } = needsOf(events, facts);
const alone = events.map((event) => costing(event, facts).value);

test('costs of the set are the costs of its events, to the penny, by event and by ingredient', () => {
  expect(together.total).toBe(alone.reduce((sum, { cost }) => sum + cost.total, 0));
  expect(together.ingredients.reduce((sum, { cost }) => sum + (cost ?? 0), 0)).toBe(together.total);
});

test('an ingredient of the set is bought and prepared as much as in its events together', () => {
  for (const use of together.ingredients) {
    const parts = alone.flatMap(({ ingredients }) =>
      ingredients.filter((one) => one.ingredient.key === use.ingredient.key),
    );
    const sum = (amounts: (Rational | undefined)[]) =>
      amounts.reduce((a, b) => a && b && a.plus(b), Rational.zero)?.toString();
    expect(use.prepared?.toString(), use.ingredient.name).toBe(sum(parts.map((one) => one.prepared)));
    expect(use.bought?.value.toString(), use.ingredient.name).toBe(
      sum(parts.map((one) => one.bought?.value)),
    );
  }
});

test('a component that two parties share stands once, with the batches of both', () => {
  const shared = together.components.filter((one) => one.events.length > 1);
  expect(shared.length).toBeGreaterThan(0);
  for (const { recipe, batches, events: among } of shared) {
    const parts = among.map(
      (event) => needsOf([event], facts).value.components.find((one) => one.recipe === recipe)!,
    );
    expect(batches?.toString()).toBe(
      parts.reduce((sum, one) => sum.plus(one.batches!), Rational.zero).toString(),
    );
  }
  expect(needsOf([...events].reverse(), facts).value.total).toBe(together.total);
});
