import type { Recipe } from '../facts/recipe.js';

/**
 * What the lines of a recipe are made of, by number instead of by key: the number of an ingredient, or of a component
 * as -1 less its own. A kitchen's lines name the same keys a hundred thousand times, and looking each of them up is
 * most of what a large kitchen costs more than a small one; so it is done once for each document.
 */
export type Items = { own: number; of: Int32Array };

// Numbers are never taken back, and mean the same key in every kitchen.
const ingredients = new Map<string, number>();
const recipes = new Map<string, number>();

const numberIn = (numbers: Map<string, number>, key: string): number => {
  let number = numbers.get(key);
  if (number === undefined) {
    number = numbers.size;
    numbers.set(key, number);
  }
  return number;
};

export const ingredientNumber = (key: string): number => numberIn(ingredients, key);

/** One above the highest number given so far. */
export const numbersGiven = (): { ingredients: number; recipes: number } => ({
  ingredients: ingredients.size,
  recipes: recipes.size,
});

const kept = new WeakMap<Recipe, Items>();

export const itemsOf = (recipe: Recipe): Items => {
  let items = kept.get(recipe);
  if (!items) {
    const of = Int32Array.from(recipe.lines, ({ item }) =>
      'component' in item ? -1 - numberIn(recipes, item.component) : ingredientNumber(item.ingredient),
    );
    items = { own: numberIn(recipes, recipe.key), of };
    kept.set(recipe, items);
  }
  return items;
};
