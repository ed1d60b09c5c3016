import fc from 'fast-check';
import { expect, test } from 'vitest';
import published from '../../../shared/allergens.json' with { type: 'json' };
import { allergenList, allergensOf, type State, stateOf } from '../../../src/core/allergens.js';
import { diets, judgeRecipe, type Verdict } from '../../../src/core/diets.js';
import { byKey, type Facts } from '../../../src/core/facts/facts.js';
import type { Ingredient } from '../../../src/core/facts/ingredient.js';
import { allergenLists } from '../../../src/core/facts/kitchen.js';
import type { Recipe } from '../../../src/core/facts/recipe.js';
import { allergenMatrix } from '../../../src/core/sheets/allergen-matrix.js';
import { anyKitchen, reached } from '../kitchens.js';
import { dish } from '../small.js';

const badness: Record<State, number> = { free: 0, unknown: 1, may: 2, contains: 3 };
const hardness: Record<Verdict, number> = { yes: 0, may: 1, unknown: 2, no: 3 };
const worst = (states: readonly State[]): State =>
  states.reduce((a, b) => (badness[b] > badness[a] ? b : a), 'free');

/** Whether a label says of a substance that it is not in it, by itself or by a group that covers it. */
const saysFree = ({ allergens }: Ingredient, id: string): boolean => {
  const groups = published.groups.filter(({ members }) => members.includes(id));
  return allergens[id]
    ? allergens[id].state === 'free'
    : groups.some((group) => allergens[group.id]?.state === 'free');
};
const saysNothing = ({ allergens }: Ingredient, id: string) =>
  !allergens[id] && !saysFree({ allergens } as Ingredient, id);

const ingredientsOf = (recipe: Recipe, facts: Facts): Ingredient[] =>
  reached(recipe, facts)
    .flatMap(({ lines }) => lines)
    .flatMap(({ item }) => ('ingredient' in item ? [facts.ingredients.get(item.ingredient)!] : []));

test('the matrix of a menu is the union of its recipes’ matrices', () => {
  fc.assert(
    fc.property(anyKitchen, ({ facts }) => {
      const recipes = [...facts.recipes.values()];
      const menu = dish(
        'menu',
        '1 portion',
        recipes.map(({ key }) => `1 portion @${key}`),
      );
      const together = allergensOf(menu, { ...facts, recipes: byKey([...recipes, menu]) });
      const apart = recipes.map((recipe) => allergensOf(recipe, facts));
      for (const [i, cell] of together.entries()) {
        expect(cell.state).toBe(worst(apart.map((cells) => cells[i]!.state)));
        expect(cell.unknown).toBe(apart.some((cells) => cells[i]!.unknown));
      }
    }),
  );
});

test('another line never betters a state, nor a verdict of a diet', () => {
  fc.assert(
    fc.property(anyKitchen, fc.nat(), fc.nat(), ({ facts }, which, what) => {
      const recipes = [...facts.recipes.values()].filter(({ lines }) => lines.length > 0);
      if (recipes.length === 0) return;
      const target = recipes[which % recipes.length]!;
      const foods = [...facts.ingredients.keys()];
      const [line] = dish('x', '1 portion', [`1 g ${foods[what % foods.length]}`]).lines;
      const longer = { ...target, lines: [...target.lines, { ...line!, key: 'more' }] };
      const after = {
        ...facts,
        recipes: byKey([...facts.recipes.values()].map((r) => (r === target ? longer : r))),
      };
      for (const recipe of facts.recipes.values()) {
        const changed = after.recipes.get(recipe.key)!;
        const now = allergensOf(changed, after);
        for (const [i, before] of allergensOf(recipe, facts).entries()) {
          expect(badness[now[i]!.state]).toBeGreaterThanOrEqual(badness[before.state]);
          if (before.unknown) expect(now[i]!.unknown).toBe(true);
        }
        for (const { id } of diets) {
          const before = judgeRecipe([id], recipe, facts).verdict;
          expect(hardness[judgeRecipe([id], changed, after).verdict]).toBeGreaterThanOrEqual(
            hardness[before],
          );
        }
      }
    }),
  );
});

test('what is not known of any ingredient shows in every dish above it, and in nothing else', () => {
  fc.assert(
    fc.property(anyKitchen, ({ facts }) => {
      for (const recipe of facts.recipes.values()) {
        const foods = ingredientsOf(recipe, facts);
        const blank = reached(recipe, facts).some(({ lines }) => lines.length === 0);
        for (const { item, state, unknown } of allergensOf(recipe, facts)) {
          const silent = foods.some((food) => item.members.some((id) => saysNothing(food, id)));
          if (silent || blank) expect(unknown).toBe(true);
          if (state === 'free') expect(silent || blank).toBe(false);
          const partly = foods.some((food) => stateOf(food, item.members).unknown);
          expect(unknown).toBe(blank || partly);
        }
      }
    }),
  );
});

test('free under any list means that every substance of the entry is said to be free, in everything', () => {
  fc.assert(
    fc.property(anyKitchen, fc.constantFrom(...allergenLists), ({ facts }, list) => {
      const under = { ...facts, kitchen: { ...facts.kitchen, allergenList: list } };
      for (const recipe of facts.recipes.values()) {
        const cells = allergensOf(recipe, under);
        expect(cells.map(({ item }) => item)).toEqual(allergenList(list).items);
        for (const { item, state } of cells)
          if (state === 'free')
            for (const food of ingredientsOf(recipe, facts))
              for (const id of item.members) expect(saysFree(food, id)).toBe(true);
      }
    }),
  );
});

test('yes to an allergy means that everything in the dish is said to be free of it', () => {
  fc.assert(
    fc.property(anyKitchen, ({ facts }) => {
      for (const recipe of facts.recipes.values())
        for (const { id, kind, avoidsAllergens } of diets) {
          if (kind === 'choice' || kind === 'religious') continue;
          if (judgeRecipe([id], recipe, facts).verdict !== 'yes') continue;
          const substances = avoidsAllergens.filter(
            (one) => !published.groups.some((group) => group.id === one),
          );
          for (const food of ingredientsOf(recipe, facts))
            for (const one of substances) expect(saysFree(food, one)).toBe(true);
        }
    }),
  );
});

test('every state but free names what brings it, and every ingredient that is silent is asked about', () => {
  fc.assert(
    fc.property(anyKitchen, ({ facts, events }) => {
      for (const event of events) {
        const { value, problems } = allergenMatrix(event, facts);
        const asked = new Set(problems.map(({ subject }) => `${subject.entity} ${subject.key}`));
        for (const { recipe, cells } of value.rows)
          for (const { item, state, brings } of cells) {
            const blank = reached(recipe, facts).find(({ lines }) => lines.length === 0);
            if (state !== 'free' && !blank) expect(brings.length).toBeGreaterThan(0);
            if (blank) expect(asked).toContain(`recipe ${blank.key}`);
            for (const food of ingredientsOf(recipe, facts))
              if (
                item.members.every((id) => saysNothing(food, id)) &&
                stateOf(food, item.members).state === 'unknown'
              )
                expect(asked).toContain(`ingredient ${food.key}`);
          }
      }
    }),
  );
});
