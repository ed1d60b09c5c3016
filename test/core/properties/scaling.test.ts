import fc from 'fast-check';
import { expect, test } from 'vitest';
import { linesWeight } from '../../../src/core/batch.js';
import type { Recipe } from '../../../src/core/facts/recipe.js';
import { Rational } from '../../../src/core/quantity/rational.js';
import { requirementsOf } from '../../../src/core/requirements.js';
import { type RecipeNeed, scale } from '../../../src/core/scaling.js';
import { anyKitchen, withRecipes } from '../kitchens.js';

const bent = ['pieces', 'herb', 'chilli', 'batch'];
const straight = (recipe: Recipe): Recipe => ({
  ...recipe,
  lines: recipe.lines.map((line) => (bent.includes(line.scales) ? { ...line, scales: 'straight' } : line)),
});
const figures = (needs: readonly RecipeNeed[], by: Rational) =>
  needs.flatMap(({ recipe, factor, lines }) => [
    `${recipe.key} ${factor?.times(by)}`,
    ...lines.map(
      ({ line, unit, least, amount, prepared, bought }) =>
        `${line.key} ${least?.times(by)} ${amount?.times(by)} ${unit} ${prepared?.times(by)} ${bought?.value.times(by)} ${bought?.base}`,
    ),
  ]);
const anyFactor = fc.constantFrom('2', '1/3', '0.07', '1000000', '999999999/7').map(Rational.parse);

test('scaled by a figure and by one over it, every line and component is what it was', () => {
  fc.assert(
    fc.property(anyKitchen, anyFactor, (kitchen, by) => {
      const facts = withRecipes(kitchen.facts, straight);
      for (const recipe of facts.recipes.values()) {
        const { value: once } = scale(recipe, Rational.one, facts);
        const { value: scaled } = scale(recipe, by, facts);
        expect(figures(scaled, Rational.one.over(by))).toEqual(figures(once, Rational.one));
      }
    }),
  );
});

test('the lines of a scaled recipe weigh what the batch weighs, times the batches', () => {
  fc.assert(
    fc.property(anyKitchen, anyFactor, (kitchen, by) => {
      const facts = withRecipes(kitchen.facts, straight);
      for (const recipe of facts.recipes.values()) {
        const batch = linesWeight(recipe, facts);
        if (!batch) continue;
        const [{ lines }] = scale(recipe, by, facts).value as [RecipeNeed];
        const weighed = lines.reduce(
          (all, { prepared }) => all.plus(prepared ?? Rational.zero),
          Rational.zero,
        );
        expect(weighed.equals(batch.times(by))).toBe(true);
      }
    }),
  );
});

// In each dish of each event, on each line by itself: as many whole pieces as the exact amount, or less than one more.
test('whole pieces are rounded up once for each dish and event', () => {
  fc.assert(
    fc.property(anyKitchen, ({ facts, events }) => {
      for (const event of events)
        for (const { dishes } of requirementsOf(event, facts))
          for (const { recipes } of dishes)
            for (const { factor, lines } of recipes)
              for (const { line, base, amount } of lines) {
                if (line.scales !== 'pieces' || !factor || !base || line.unit === 'dozen') continue;
                expect(amount!.isWhole).toBe(true);
                const over = amount!.minus(factor.times(base));
                expect(over.sign >= 0 && over.compare(Rational.one) < 0).toBe(true);
              }
    }),
  );
});

test('each component of a dish is made in the sum of what its lines take', () => {
  fc.assert(
    fc.property(anyKitchen, ({ facts, events }) => {
      for (const event of events)
        for (const { dishes } of requirementsOf(event, facts))
          for (const { recipes } of dishes)
            for (const { recipe, factor } of recipes.slice(1)) {
              const uses = recipes
                .flatMap(({ lines }) => lines)
                .filter(({ component, line }) => component === recipe && line.amount !== null);
              const known = uses.every(({ batches }) => batches);
              const sum = uses.reduce(
                (all, { batches }) => all.plus(batches ?? Rational.zero),
                Rational.zero,
              );
              expect(factor?.toString()).toBe(known ? sum.toString() : undefined);
            }
    }),
  );
});
