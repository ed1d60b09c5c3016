import fc from 'fast-check';
import { expect, test } from 'vitest';
import { costOf, costOfEvent } from '../../../src/core/costing.js';
import type { Event } from '../../../src/core/facts/event.js';
import { byKey, type Facts } from '../../../src/core/facts/facts.js';
import type { Ingredient } from '../../../src/core/facts/ingredient.js';
import { allocate } from '../../../src/core/money.js';
import { Rational, sum } from '../../../src/core/quantity/rational.js';
import { requirementsOf } from '../../../src/core/requirements.js';
import { scale } from '../../../src/core/scaling.js';
import { costing } from '../../../src/core/sheets/costing.js';
import { scaledRecipe } from '../../../src/core/sheets/scaled-recipe.js';
import { anyKitchen, reached, withRecipes } from '../kitchens.js';

const added = (parts: readonly number[]) => parts.reduce((all, part) => all + part, 0);
// Past this a total is no whole number of pennies a computer keeps exactly; nobody's party costs ninety trillion.
const payable = (total: number) => total < Number.MAX_SAFE_INTEGER;

/** Ingredients that stand with an amount in what is cooked for an event. */
const used = (event: Event, facts: Facts): Set<Ingredient> =>
  new Set(
    event.courses
      .flatMap(({ dishes }) => dishes)
      .flatMap((dish) => reached(facts.recipes.get(dish.recipe)!, facts))
      .flatMap(({ lines }) => lines)
      .flatMap(({ amount, item }) =>
        amount !== null && 'ingredient' in item ? [facts.ingredients.get(item.ingredient)!] : [],
      ),
  );

test('lines add up to their dish, dishes and ingredients to the event, to the penny and exactly', () => {
  fc.assert(
    fc.property(anyKitchen, ({ facts, events }) => {
      for (const event of events) {
        const { cost, ingredients } = costing(event, facts).value;
        if (!payable(cost.total)) continue;
        const dishes = cost.courses.flatMap((course) => course.dishes);
        expect(added(dishes.map((dish) => dish.cost))).toBe(cost.total);
        for (const dish of dishes) {
          const known = dish.recipes[0]!.lines.filter((line) => line.cost && !line.cost.isZero);
          expect(added(dish.lines)).toBe(known.length ? dish.cost : 0);
        }
        expect(sum(dishes.map(({ exact }) => exact)).equals(cost.exact)).toBe(true);
        expect(sum(ingredients.map(({ exact }) => exact ?? Rational.zero)).equals(cost.exact)).toBe(true);
        expect(added(ingredients.map((use) => use.cost ?? 0))).toBe(cost.total);
      }
    }),
    { numRuns: 200 },
  );
});

test('the lines of a recipe add up to it', () => {
  fc.assert(
    fc.property(anyKitchen, ({ facts }) => {
      for (const recipe of facts.recipes.values()) {
        const { lines, cost } = scaledRecipe(recipe, undefined, facts).value;
        if (payable(cost)) expect(added(lines.map((line) => line.cost ?? 0))).toBe(cost);
      }
    }),
  );
});

test('a missing price always leaves the cost incomplete and is named; a complete cost lacks none', () => {
  fc.assert(
    fc.property(anyKitchen, ({ facts, events }) => {
      for (const event of events) {
        const { value, problems } = costOfEvent(event, facts);
        const said = problems.map(({ sentence }) => sentence);
        for (const { name, notBought, packs } of used(event, facts)) {
          if (notBought || packs.some(({ prices }) => prices.length > 0)) continue;
          expect(value.complete).toBe(false);
          expect(said).toContain(`No price for ${name}.`);
        }
        const gaps = problems.filter(({ weight }) => weight !== 'check');
        expect(value.complete).toBe(gaps.length === 0);
      }
    }),
    { numRuns: 200 },
  );
});

test('what is not bought costs a true zero, on every line that has an amount', () => {
  fc.assert(
    fc.property(anyKitchen, ({ facts, events }) => {
      const free = [...facts.ingredients.values()].map((one) => ({ ...one, notBought: true }));
      const given = { ...facts, ingredients: byKey(free) };
      for (const event of events) {
        const { value, problems } = costOfEvent(event, given);
        expect([value.total, value.exact.isZero]).toEqual([0, true]);
        expect(problems.map(({ code }) => code)).not.toContain('no-price');
      }
    }),
  );
});

test('twice the price is twice the cost, and twice the batches too where nothing goes by the piece', () => {
  fc.assert(
    fc.property(anyKitchen, ({ facts }) => {
      const straight = withRecipes(facts, (recipe) => ({
        ...recipe,
        lines: recipe.lines.map((line) => ({ ...line, scales: line.amount === null ? 'taste' : 'straight' })),
      }));
      for (const recipe of straight.recipes.values()) {
        const cost = (n: number) => costOf(scale(recipe, Rational.of(n), straight).value, straight).value[0]!;
        expect(cost(2).cost.equals(cost(1).cost.times(Rational.of(2)))).toBe(true);
        expect(cost(2).complete).toBe(cost(1).complete);
      }
    }),
  );
});

test('a total is split into whole parts that add up to it, each within one of its share', () => {
  const shares = fc.array(fc.tuple(fc.nat(10 ** 9), fc.integer({ min: 1, max: 999 })), {
    minLength: 1,
    maxLength: 20,
  });
  fc.assert(
    fc.property(fc.nat(10 ** 9), shares, (total, pairs) => {
      const exact = pairs.map(([n, d]) => Rational.of(n, d));
      const whole = sum(exact);
      const parts = allocate(total, exact);
      if (whole.isZero) return expect(added(parts)).toBe(0);
      expect(added(parts)).toBe(total);
      for (const [i, part] of parts.entries()) {
        const off = Rational.of(part).minus(exact[i]!.times(Rational.of(total)).over(whole));
        expect(Math.abs(off.toNumber())).toBeLessThan(1);
      }
    }),
  );
});

test('a dish needs the same whoever asks', () => {
  fc.assert(
    fc.property(anyKitchen, ({ facts, events }) => {
      for (const event of events) {
        const own = costOfEvent(event, facts).value;
        expect(costOfEvent(event, facts, requirementsOf(event, facts)).value.total).toBe(own.total);
      }
    }),
    { numRuns: 20 },
  );
});
