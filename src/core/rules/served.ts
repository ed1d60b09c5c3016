import type { Served } from '../facts/event.js';
import { type Known, nothingKnown } from '../known.js';
import { ingredientRules } from './ingredient.js';
import { kitchenRules, placeRules } from './kitchen.js';
import { asKnown, recipeRules } from './recipe.js';
import { ownKeys, type Refuse } from './refuse.js';

/** Why what was served cannot be kept: it is calculated from like any other facts, so the same rules hold. */
export const servedRules = ({ kitchen, places, ingredients, recipes }: Served, refuse: Refuse): void => {
  const at =
    (path: string): Refuse =>
    (field, code, sentence) =>
      refuse(`served/${path}/${field}`, code, sentence);
  const known: Known = {
    ...nothingKnown,
    ingredients: new Set(ingredients.map(({ key }) => key)),
    recipes: new Map(recipes.map((recipe) => [recipe.key, asKnown(recipe)])),
  };
  // What a diet of the kitchen's own avoids was not served for that.
  const avoided = kitchen.diets.flatMap(({ avoidsIngredients }) => avoidsIngredients);
  kitchenRules(
    kitchen,
    { ...known, ingredients: new Set([...known.ingredients, ...avoided]) },
    at('kitchen'),
  );
  ownKeys('served/places', places, refuse);
  ownKeys('served/ingredients', ingredients, refuse);
  ownKeys('served/recipes', recipes, refuse);
  for (const place of places) {
    const otherHomes = place.kind === 'home' ? [] : ['the home kitchen'];
    placeRules(place, { ...known, otherHomes }, at(`places/${place.key}`));
  }
  // What might have stood in for something was not served.
  for (const one of ingredients)
    ingredientRules({ ...one, substitutes: [] }, known, at(`ingredients/${one.key}`));
  // What a variant is a variant of was not served with it.
  for (const one of recipes) recipeRules({ ...one, variantOf: null }, known, at(`recipes/${one.key}`));
};
