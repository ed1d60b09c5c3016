import fc from 'fast-check';
import { expect, test } from 'vitest';
import published from '../../../shared/allergens.json' with { type: 'json' };
import { allergenList, allergensOf, stated, stateOf } from '../../../src/core/allergens.js';
import { coverageOf } from '../../../src/core/coverage.js';
import { diets, judgeGuest, type Verdict } from '../../../src/core/diets.js';
import { type Guest, guest } from '../../../src/core/facts/event.js';
import { byKey, type Facts } from '../../../src/core/facts/facts.js';
import { allergenLists } from '../../../src/core/facts/kitchen.js';
import type { Recipe } from '../../../src/core/facts/recipe.js';
import { traits } from '../../../src/core/facts/traits.js';
import { anyKitchen, reached } from '../kitchens.js';
import { dish } from '../small.js';

const hardness: Record<Verdict, number> = { yes: 0, may: 1, unknown: 2, no: 3 };
const ids = [...published.substances, ...published.groups].map(({ id }) => id);

/** A guest with any diets, the kitchen's own too, dislikes and a word on traces; the kitchen beside it. */
const anyGuest = fc
  .record({
    diets: fc.subarray([...diets.map(({ id }) => id), 'own'], { maxLength: 3 }),
    avoids: fc.subarray(['f0', 'f1', 'f2'], { maxLength: 2 }),
    traces: fc.boolean(),
    answered: fc.oneof(
      { weight: 6, arbitrary: fc.constant(true) },
      { weight: 1, arbitrary: fc.constant(false) },
    ),
    other: fc.constantFrom('', '', '', 'soft food'),
    own: fc.record({
      kind: fc.constantFrom('allergen', 'choice', 'religious', 'medical'),
      avoidsTraits: fc.subarray([...traits], { maxLength: 2 }),
      avoidsAllergens: fc.subarray(ids, { maxLength: 2 }),
      avoidsIngredients: fc.subarray(['f0', 'f3'], { maxLength: 1 }),
    }),
  })
  .map(({ own, ...more }) => ({
    guest: guest.parse({ key: 'ana', name: 'Ana', group: 'adults', ...more }),
    own: { key: 'own', name: 'own', ...own },
  }));
type Any = { guest: Guest; own: object };

/** The kitchen with the guest's own diet in it, and the names its dislikes stand for. */
const withOwn = (facts: Facts, { own }: Any): Facts => ({
  ...facts,
  kitchen: { ...facts.kitchen, diets: [own as Facts['kitchen']['diets'][number]] },
});
const keysIn = (facts: Facts, { guest }: Any): Guest => {
  const foods = [...facts.ingredients.keys()];
  return {
    ...guest,
    avoids: guest.avoids.flatMap((key) => foods[Number(key.slice(1)) % foods.length] ?? []),
  };
};
const withLine = (target: Recipe, food: string, facts: Facts): Facts => {
  const [line] = dish('x', '1 portion', [`1 g ${food}`]).lines;
  const longer = { ...target, lines: [...target.lines, { ...line!, key: 'more' }] };
  return { ...facts, recipes: byKey([...facts.recipes.values()].map((r) => (r === target ? longer : r))) };
};

test('another line never betters what a guest is told, whatever their diets, dislikes and traces', () => {
  fc.assert(
    fc.property(anyKitchen, anyGuest, fc.nat(), fc.nat(), ({ facts: bare }, any, which, what) => {
      const facts = withOwn(bare, any);
      const one = keysIn(facts, any);
      const recipes = [...facts.recipes.values()].filter(({ lines }) => lines.length > 0);
      if (recipes.length === 0) return;
      const foods = [...facts.ingredients.keys()];
      const after = withLine(recipes[which % recipes.length]!, foods[what % foods.length]!, facts);
      for (const recipe of facts.recipes.values()) {
        const before = judgeGuest(one, recipe, facts).verdict;
        const now = judgeGuest(one, after.recipes.get(recipe.key)!, after).verdict;
        expect(hardness[now]).toBeGreaterThanOrEqual(hardness[before]);
      }
    }),
  );
});

test('a guest with an allergy is told yes only of what is said to be free of it, or may contain it where traces do not matter', () => {
  fc.assert(
    fc.property(anyKitchen, anyGuest, ({ facts: bare }, any) => {
      const facts = withOwn(bare, any);
      const one = keysIn(facts, any);
      for (const recipe of facts.recipes.values()) {
        const { verdict } = judgeGuest(one, recipe, facts);
        if (verdict !== 'yes' && verdict !== 'may') continue;
        expect([one.answered, one.other]).toEqual([true, '']);
        const foods = reached(recipe, facts)
          .flatMap(({ lines }) => lines)
          .flatMap(({ item }) => ('ingredient' in item ? [facts.ingredients.get(item.ingredient)!] : []));
        for (const food of foods) {
          expect(one.avoids).not.toContain(food.key);
          for (const { id, kind, avoidsAllergens } of diets) {
            if (!one.diets.includes(id) || kind === 'choice' || kind === 'religious') continue;
            for (const substance of avoidsAllergens.filter(
              (a) => ids.indexOf(a) < published.substances.length,
            )) {
              const state = stated(food, substance);
              expect(['free', 'may']).toContain(state);
              if (verdict === 'yes' && one.traces) expect(state).toBe('free');
            }
          }
        }
      }
    }),
  );
});

test('knowing less of an ingredient never turns a verdict to yes', () => {
  fc.assert(
    fc.property(anyKitchen, anyGuest, fc.nat(), fc.nat(), ({ facts: bare }, any, which, what) => {
      const facts = withOwn(bare, any);
      const one = keysIn(facts, any);
      const food = [...facts.ingredients.values()][which % facts.ingredients.size]!;
      const said = Object.entries(food.allergens);
      const [id, { state }] = said[what % Math.max(said.length, 1)] ?? ['', { state: 'free' }];
      // A "contains" or "may contain" that is struck out is another fact; one that was free is one fact fewer.
      if (id === '' || state !== 'free') return;
      const { [id]: _, ...allergens } = food.allergens;
      const ingredients = byKey(
        [...facts.ingredients.values()].map((each) => (each === food ? { ...food, allergens } : each)),
      );
      for (const recipe of facts.recipes.values()) {
        const before = judgeGuest(one, recipe, facts).verdict;
        const now = judgeGuest(one, recipe, { ...facts, ingredients }).verdict;
        if (before !== 'yes') expect(now).not.toBe('yes');
      }
    }),
  );
});

test('no change of the list invents a free: what the new list asks and nobody said is not known', () => {
  fc.assert(
    fc.property(
      anyKitchen,
      fc.constantFrom(...allergenLists),
      fc.constantFrom(...allergenLists),
      ({ facts }, old, now) => {
        const under = (id: typeof old) => ({ ...facts, kitchen: { ...facts.kitchen, allergenList: id } });
        const asked = new Set(allergenList(old).items.flatMap(({ members }) => members));
        // Only what the old list asked was ever read.
        const read = byKey(
          [...facts.ingredients.values()].map((food) => ({
            ...food,
            allergens: Object.fromEntries(Object.entries(food.allergens).filter(([id]) => asked.has(id))),
          })),
        );
        const switched = { ...under(now), ingredients: read };
        for (const recipe of facts.recipes.values()) {
          const foods = reached(recipe, facts).some(({ lines }) =>
            lines.some(({ item }) => 'ingredient' in item),
          );
          for (const { item, state, unknown } of allergensOf(recipe, switched)) {
            const isNew = item.members.some((id) => !asked.has(id));
            if (isNew && foods) expect([state === 'free', unknown]).toEqual([false, true]);
          }
        }
        for (const food of read.values())
          for (const item of allergenList(now).items)
            if (stateOf(food, item.members).state === 'free')
              for (const id of item.members) expect(asked.has(id)).toBe(true);
      },
    ),
    { numRuns: 200 },
  );
});

test('nobody has more in a course than by their diets, nor by a dish that does not count or is not served to them', () => {
  fc.assert(
    fc.property(anyKitchen, ({ facts, events }) => {
      for (const event of events) {
        const buffet = {
          ...event,
          courses: event.courses.map((one) => ({ ...one, service: 'shared' as const })),
        };
        for (const party of [event, buffet])
          for (const { guest: one, cells, courses } of coverageOf(party, facts).rows)
            for (const { course, has, short } of courses) {
              const here = cells.filter((cell) => cell.course === course);
              const best = Math.min(3, ...here.map(({ verdict }) => hardness[verdict]));
              expect(hardness[has]).toBeGreaterThanOrEqual(best);
              if (short) expect(has).toBe('no');
              if (!one!.answered) expect(has).not.toBe('yes');
              for (const { counts, verdict } of here)
                if (!counts) expect(hardness[verdict]).toBeGreaterThanOrEqual(hardness.unknown);
            }
      }
    }),
  );
});
