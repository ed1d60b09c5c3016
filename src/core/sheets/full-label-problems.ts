import type { Ingredient } from '../facts/ingredient.js';
import type { Recipe } from '../facts/recipe.js';
import type { Problem } from '../problem.js';
import { ofIngredient, ofRecipe } from '../problems.js';

/** What stands in the way of a full ingredient label, one sentence each. */

export const placeOpen = (recipe: Recipe, line: string, name: string): Problem => ({
  weight: 'ask',
  code: 'label-place-open',
  sentence: `${recipe.name}: what ${name} weighs is not known, so its place in the list is not.`,
  subject: ofRecipe(recipe, `lines/${line}/amount`),
});

export const toTaste = (recipe: Recipe, line: string, name: string): Problem => ({
  weight: 'check',
  code: 'label-to-taste',
  sentence: `${recipe.name}: ${name} goes in to taste and stands last. That holds for less than 2 % of the food; weigh it where it may be more.`,
  subject: ofRecipe(recipe, `lines/${line}/amount`),
});

export const ownListOpen = (ingredient: Ingredient): Problem => ({
  weight: 'ask',
  code: 'label-list-open',
  sentence: `${ingredient.name}: its own list of ingredients is not entered. Type it from its label.`,
  subject: ofIngredient(ingredient, 'labelText'),
});

export const keepingOpen = (recipe: Recipe): Problem => ({
  weight: 'check',
  code: 'label-use-by-open',
  sentence: `${recipe.name}: how many days it keeps is not entered, so the use-by date is left to write in.`,
  subject: ofRecipe(recipe, 'keepingDays'),
});

export const labelTooLong = (recipe: Recipe): Problem => ({
  weight: 'ask',
  code: 'label-too-long',
  sentence: `${recipe.name}: its list of ingredients is longer than any label. Shorten what it is made of.`,
  subject: ofRecipe(recipe, 'lines'),
});
