import fc from 'fast-check';
import { expect, test } from 'vitest';
import { costOf } from '../../../src/core/costing.js';
import type { Line } from '../../../src/core/facts/recipe.js';
import { growth } from '../../../src/core/growth.js';
import { cookedYieldOf } from '../../../src/core/line-weight.js';
import { exact } from '../../../src/core/quantity/amount.js';
import { Rational, sum } from '../../../src/core/quantity/rational.js';
import { scale } from '../../../src/core/scaling.js';
import { anyKitchen, withRecipes } from '../kitchens.js';
import { dish, factsOf, food } from '../small.js';

const r = Rational.of;
const figure = fc
  .tuple(fc.integer({ min: 0, max: 10 ** 6 }), fc.integer({ min: 1, max: 999 }))
  .map(([n, d]) => r(n, d));
const spices = fc.constantFrom<Line['scales']>('herb', 'chilli');

test('a spice grows straight to twice the recipe, then more slowly, and never shrinks as the recipe grows', () => {
  fc.assert(
    fc.property(spices, figure, figure, (way, one, other) => {
      const [less, more] = one.compare(other) <= 0 ? [one, other] : [other, one];
      expect(growth(way, less).compare(growth(way, more))).toBeLessThanOrEqual(0);
      expect(growth(way, more).compare(more)).toBeLessThanOrEqual(0);
      expect(growth(way, more).equals(more)).toBe(more.compare(r(2)) <= 0);
    }),
  );
});

test('what goes in once for each batch is the same all through a batch, and never short of it', () => {
  fc.assert(
    fc.property(figure, (batches) => {
      const taken = growth('batch', batches);
      expect(taken.isWhole && taken.compare(batches) >= 0).toBe(true);
      expect(taken.minus(batches).compare(Rational.one)).toBe(-1);
      const within = r(batches.ceil());
      expect(growth('batch', within).equals(taken)).toBe(true);
    }),
  );
});

const anyTimes = fc.constantFrom('1', '2', '0.3', '4.6', '1000').map(Rational.parse);
const upperAlone = (line: Line): Line => ({ ...line, amount: line.amountTo ?? line.amount, amountTo: null });

test('of a range the upper end is needed, weighed, bought and paid for, as if it stood alone', () => {
  fc.assert(
    fc.property(anyKitchen, anyTimes, ({ facts }, times) => {
      const alone = withRecipes(facts, (recipe) => ({ ...recipe, lines: recipe.lines.map(upperAlone) }));
      for (const recipe of facts.recipes.values()) {
        const both = scale(recipe, times, facts).value;
        const one = scale(alone.recipes.get(recipe.key)!, times, alone).value;
        const said = (needs: typeof both) =>
          needs.flatMap(({ lines }) =>
            lines.map(({ amount, prepared, bought }) => `${amount} ${prepared} ${bought?.value}`),
          );
        expect(said(both)).toEqual(said(one));
        expect(costOf(both, facts).value[0]!.cost.equals(costOf(one, alone).value[0]!.cost)).toBe(true);
        for (const { least, amount } of both.flatMap(({ lines }) => lines))
          if (least && amount) expect(least.compare(amount)).toBeLessThanOrEqual(0);
      }
    }),
  );
});

test('what is stated once cooked goes in at that weight, and what is bought cooks down or swells to it', () => {
  fc.assert(
    fc.property(anyKitchen, anyTimes, ({ facts }, times) => {
      for (const recipe of facts.recipes.values())
        for (const { line, ingredient, prepared, bought } of scale(recipe, times, facts).value[0]!.lines) {
          const way = ingredient && line.stated === 'cooked' && cookedYieldOf(ingredient, line.cooked);
          if (!way || !prepared || !bought) continue;
          const edible = way.from === 'bought' ? Rational.one : exact(ingredient.edibleYield!.yield);
          expect(bought.value.times(edible).times(exact(way.yield)).equals(prepared)).toBe(true);
        }
    }),
  );
});

test('a dough in per cent of its flour weighs what it is said to make, before the loss in cooking', () => {
  const anyPercent = fc.integer({ min: 1, max: 999 }).map(String);
  const loss = fc.constantFrom(null, '0', '12.5', '99');
  fc.assert(
    fc.property(fc.array(anyPercent, { maxLength: 6 }), loss, figure, (percents, cookingLoss, times) => {
      const cut = ['60 percent flour flour', '40 percent rye flour', '7 g salt'];
      const shares = percents.map((percent) => `${percent} percent water`);
      const yields = { yield: { portions: '1', weight: { amount: '1.5', unit: 'kg' } }, cookingLoss };
      const facts = factsOf([
        dish('bread', '1 portion', [...cut, ...shares], yields),
        ...['flour', 'rye', 'water', 'salt'].map((key) => food(key)),
      ]);
      const { value } = scale(facts.recipes.get('bread')!, times, facts);
      const keeps = r(100)
        .minus(exact(cookingLoss ?? '0'))
        .over(r(100));
      const dough = sum(value[0]!.lines.map(({ prepared }) => prepared!));
      expect(dough.times(keeps).equals(r(1500).times(times))).toBe(true);
    }),
  );
});
