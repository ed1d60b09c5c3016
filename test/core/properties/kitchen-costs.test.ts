import fc from 'fast-check';
import { expect, test } from 'vitest';
import { makes } from '../../../src/core/batch.js';
import { costOf } from '../../../src/core/costing.js';
import { costsMoved } from '../../../src/core/costs-moved.js';
import type { Facts } from '../../../src/core/facts/facts.js';
import { type Ingredient, ingredient } from '../../../src/core/facts/ingredient.js';
import { type Recipe, recipe } from '../../../src/core/facts/recipe.js';
import {
  costsBy,
  costsWith,
  exactCost,
  figureOf,
  gapsOf,
  type KitchenCosts,
  kitchenCosts,
} from '../../../src/core/kitchen-costs.js';
import { Rational } from '../../../src/core/quantity/rational.js';
import { scale } from '../../../src/core/scaling.js';
import { anyKitchen, withRecipes } from '../kitchens.js';

/*
 * What a kitchen's recipes cost all at once is held against the definition, one recipe at a time in plain fractions:
 * scaled to one batch by itself, and costed. Kitchens come with all that lines can be, gaps and extreme figures too.
 */

const twists: object[] = [
  {},
  {},
  ...(['pieces', 'herb', 'chilli', 'batch', 'flour'] as const).map((scales) => ({ scales })),
  { amountTo: '300' },
  { unit: 'percent' },
  { stated: 'cooked', cooked: 'roasted', unit: 'g' },
  { scales: 'pieces', unit: 'batch' },
  { scales: 'batch', unit: 'portion' },
];

/** A kitchen with some lines twisted: an amount that goes to taste stays so. */
const anyTwisted: fc.Arbitrary<Facts> = fc
  .tuple(anyKitchen, fc.array(fc.nat(twists.length - 1), { minLength: 1, maxLength: 40 }))
  .map(([{ facts }, picks]) => {
    let next = 0;
    const twisted = withRecipes(facts, (one) => ({
      ...one,
      lines: recipe.parse({
        ...one,
        lines: one.lines.map((line) =>
          line.amount === null ? line : { ...line, ...twists[picks[next++ % picks.length]!] },
        ),
      }).lines,
    }));
    const cookedYields = [{ name: 'roasted', yield: '0.584', from: 'bought' as const, source: '' }];
    const ingredients = [...facts.ingredients].map(([key, one], at): [string, Ingredient] => [
      key,
      at % 2 === 0 ? { ...one, cookedYields } : one,
    ]);
    return { ...twisted, ingredients: new Map(ingredients) };
  });

const byDefinition = (one: Recipe, facts: Facts) => {
  const { value: needs, problems } = scale(one, Rational.one, facts);
  const { value, problems: found } = costOf(needs, facts);
  return { ...value[0]!, problems: [...problems, ...found] };
};

const agrees = (costs: KitchenCosts, facts: Facts) => {
  for (const one of facts.recipes.values()) {
    const { cost, complete, problems } = byDefinition(one, facts);
    const figure = figureOf(costs, one.key)!;
    expect(exactCost(costs, one.key).toString()).toBe(cost.toString());
    expect([figure.batch, figure.complete]).toEqual([Number(cost.round()), complete]);
    const { portions, g } = makes(one, facts);
    if (portions) expect(figure.each).toBe(portions.isZero ? undefined : Number(cost.over(portions).round()));
    else if (g) expect(figure.each).toBe(Number(cost.times(Rational.of(1000)).over(g).round()));
    const gaps = gapsOf(costs, one.key);
    expect(gaps.some(({ weight }) => weight === 'ask')).toBe(!complete);
    const guesses = (list: typeof problems) => list.some(({ code }) => code === 'guessed-price');
    expect([figure.guess, guesses(gaps)]).toEqual([guesses(problems), guesses(problems)]);
  }
};

test('every recipe costs what it costs scaled to one batch by itself, exactly and to the penny', () => {
  fc.assert(
    fc.property(anyTwisted, (facts) => agrees(kitchenCosts(facts), facts)),
    { numRuns: 1000 },
  );
});

const price = fc.option(fc.record({ price: fc.nat(5000), guess: fc.boolean() }), { nil: null });

test('prices that move are followed to everything that uses them; the costs before stay as they were', () => {
  fc.assert(
    fc.property(anyTwisted, fc.array(price, { minLength: 1, maxLength: 5 }), (facts, prices) => {
      const before = kitchenCosts(facts);
      const shown = JSON.stringify([...facts.recipes.keys()].map((key) => figureOf(before, key)));
      const changed = [...facts.ingredients.values()].slice(0, prices.length).map((one, at) => {
        const paid = prices[at] ? [{ key: 'new', date: '2026-02-01', ...prices[at] }] : [];
        return ingredient.parse({ ...one, packs: one.packs.map((pack) => ({ ...pack, prices: paid })) });
      });
      const after = costsWith(before, changed);
      expect(after.facts.ingredients.get(changed[0]!.key)).toBe(changed[0]);
      agrees(after, after.facts);
      expect(JSON.stringify([...facts.recipes.keys()].map((key) => figureOf(before, key)))).toBe(shown);
      const moved = new Set(costsMoved(before, after).map(({ recipe }) => recipe.key));
      for (const key of facts.recipes.keys()) {
        const [was, is] = [figureOf(before, key), figureOf(after, key)];
        const known = was!.complete || is!.complete;
        expect(moved.has(key)).toBe(known && JSON.stringify(was) !== JSON.stringify(is));
      }
      expect(costsMoved(before, kitchenCosts(after.facts)).length).toBe(moved.size);
    }),
    { numRuns: 500 },
  );
});

test('whatever else changes, earlier costs lend nothing that no longer holds', () => {
  fc.assert(
    fc.property(anyTwisted, anyTwisted, (one, other) => {
      agrees(costsBy(other, kitchenCosts(one)), other);
      const [first, ...rest] = one.ingredients.values();
      const yields = [first!, ...rest].map((i): [string, Ingredient] => [
        i.key,
        { ...i, edibleYield: { yield: '0.7', source: '' } },
      ]);
      const mended = { ...one, ingredients: new Map(yields) };
      agrees(costsBy(mended, kitchenCosts(one)), mended);
    }),
    { numRuns: 300 },
  );
});
