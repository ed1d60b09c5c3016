import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Facts } from '../../../src/core/facts/facts.js';
import type { Recipe } from '../../../src/core/facts/recipe.js';
import { atHand } from '../../../src/core/limit.js';
import { Rational } from '../../../src/core/quantity/rational.js';
import type { Asked, Way } from '../../../src/core/scale-to.js';
import { scaledRecipe } from '../../../src/core/sheets/scaled-recipe.js';
import { scaledRecipeSheet } from '../../../src/core/sheets/scaled-recipe-sheet.js';
import { anyTin } from '../../arbitraries/tin.js';
import { anyKitchen } from '../kitchens.js';

const amount = fc.constantFrom('1', '0.001', '7/3', '250', '999999999999');
const measure = fc.record({ amount, unit: fc.constantFrom('g', 'kg', 'ml', 'each', 'clove', 'batch') });

const anyWay = (recipe: Recipe, facts: Facts): fc.Arbitrary<Way> => {
  const foods = atHand(recipe, facts).map(({ key }) => key);
  const ways: fc.Arbitrary<Way>[] = [
    amount.map((text) => ({ portions: Rational.parse(text) })),
    measure.map((total) => ({ total })),
    anyTin.map((tin) => ({ tin })),
  ];
  const as = fc.constantFrom<('bought' | 'prepared')[]>('bought', 'prepared');
  if (foods.length > 0) ways.push(fc.record({ have: measure, of: fc.constantFrom(...foods), as }));
  return fc.oneof(...ways);
};

const maybe = <T>(arb: fc.Arbitrary<T>) => fc.option(arb, { nil: null });

const anyAsked = anyKitchen.chain(({ facts }) =>
  fc.constantFrom(...facts.recipes.values()).chain((recipe) =>
    fc
      .record({
        way: anyWay(recipe, facts),
        more: fc.record({ portion: maybe(measure), into: maybe(anyTin), wholeBatches: fc.boolean() }),
        tin: maybe(anyTin),
      })
      .map(({ way, more, tin }) => ({
        asked: { ...way, ...more } as Asked,
        recipe: { ...recipe, tin },
        facts,
      })),
  ),
);

test('whatever is asked of whatever recipe is answered, or says what is missing', () => {
  fc.assert(
    fc.property(anyAsked, ({ asked, recipe, facts }) => {
      const answer = scaledRecipe(recipe, asked, facts);
      const { factor } = answer.value;
      if (!factor) expect(answer.problems.length).toBeGreaterThan(0);
      else expect(factor.sign).toBe(1);
      if (factor && asked.wholeBatches) expect(factor.isWhole).toBe(true);
      const { tables, about } = scaledRecipeSheet(answer);
      expect(JSON.stringify([tables, about])).not.toMatch(/undefined|NaN|\[object/);
    }),
  );
});
