import type { Ingredient } from '../facts/ingredient.js';
import type { Known } from '../known.js';
import { isZero, ownKeys, type Refuse } from './refuse.js';

/** The ingredients and recipes that stand in for an ingredient, by their keys. */
export const standInsOf = ({ substitutes }: Ingredient): { ingredients: string[]; recipes: string[] } => ({
  ingredients: substitutes.flatMap(({ item }) => ('ingredient' in item ? [item.ingredient] : [])),
  recipes: substitutes.flatMap(({ item }) => ('component' in item ? [item.component] : [])),
});

/** Why the substitutes of an ingredient cannot be saved. */
export const substituteRules = (ingredient: Ingredient, known: Known, refuse: Refuse): void => {
  ownKeys('substitutes', ingredient.substitutes, refuse);
  const seen = new Set<string>();
  for (const { key, item, ratio } of ingredient.substitutes) {
    const at = `substitutes/${key}`;
    if (isZero(ratio))
      refuse(
        `${at}/ratio`,
        'ratio-zero',
        'A ratio is more than 0: type how much stands in for one part, such as 0.8.',
      );
    const what = 'ingredient' in item ? item.ingredient : item.component;
    const there = 'ingredient' in item ? known.ingredients.has(what) : known.recipes.has(what);
    const kind = 'ingredient' in item ? 'ingredient' : 'recipe';
    if ('ingredient' in item && what === ingredient.key)
      refuse(
        `${at}/item`,
        'substitute-itself',
        `${ingredient.name} cannot stand in for itself: type something else.`,
      );
    else if (!there) refuse(`${at}/item`, `no-such-${kind}`, `There is no ${kind} with the key "${what}".`);
    const mark = `${kind} ${what}`;
    if (seen.has(mark))
      refuse(`${at}/item`, 'substitute-twice', 'This stands in for it already: keep one of the two.');
    seen.add(mark);
  }
};
