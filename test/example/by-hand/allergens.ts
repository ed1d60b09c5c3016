import published from '../../../shared/allergens.json' with { type: 'json' };
import type { Workbook } from '../../../src/core/facts/facts.js';
import type { Ingredient } from '../../../src/core/facts/ingredient.js';

export type State = 'contains' | 'may' | 'unknown' | 'free';
export type Way = { ingredient: Ingredient; via: string[] };

/** Every way an ingredient comes into a dish, layer by layer: the dish's own lines, its components', theirs … */
export const waysInto = (recipeKey: string, book: Workbook): Way[] => {
  const found: Way[] = [];
  let layer = [{ recipe: recipeKey, via: [] as string[] }];
  while (layer.length) {
    const next: typeof layer = [];
    for (const { recipe, via } of layer) {
      for (const { item } of book.recipes.find((one) => one.key === recipe)!.lines) {
        if ('component' in item) next.push({ recipe: item.component, via: [...via, item.component] });
        else found.push({ ingredient: book.ingredients.find((one) => one.key === item.ingredient)!, via });
      }
    }
    layer = next;
  }
  const once = new Map(found.map((way) => [`${way.ingredient.key} ${way.via.join(' ')}`, way]));
  return [...once.values()];
};

/** What is stated of an ingredient for these substances, "unknown" for each that is not, by itself or by its group. */
export const statesOf = (ingredient: Ingredient, members: string[]): State[] => {
  const said = published.groups.flatMap((group) => {
    const state = ingredient.allergens[group.id]?.state;
    return state ? [{ state, covers: group.members }] : [];
  });
  const freed = (id: string) => said.some(({ state, covers }) => state === 'free' && covers.includes(id));
  return [
    ...members.map((id): State => ingredient.allergens[id]?.state ?? (freed(id) ? 'free' : 'unknown')),
    ...said.flatMap(({ state, covers }): State[] => {
      if (state === 'free' || !covers.some((one) => members.includes(one))) return [];
      return [covers.every((one) => members.includes(one)) ? state : 'unknown'];
    }),
  ];
};

export const worst = (states: State[]): State =>
  (['contains', 'may', 'unknown'] as const).find((state) => states.includes(state)) ?? 'free';

/** A dish in the list's order: each entry's state, whether any of it is not known, and what brings it in. */
export const matrixRow = (recipeKey: string, book: Workbook) => {
  const ways = waysInto(recipeKey, book);
  const { items } = published.lists.find((list) => list.id === book.kitchen.allergenList)!;
  return Object.fromEntries(
    items.map((item) => {
      const all = ways.flatMap(({ ingredient }) => statesOf(ingredient, item.members));
      const from = ways
        .map(({ ingredient, via }) => ({
          ingredient: ingredient.key,
          state: worst(statesOf(ingredient, item.members)),
          via,
        }))
        .filter(({ state }) => state !== 'free')
        .sort((a, b) => order(a.ingredient, b.ingredient) || order(a.via.join(), b.via.join()));
      return [item.id, { state: worst(all), unknown: all.includes('unknown'), from }];
    }),
  );
};

const order = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
