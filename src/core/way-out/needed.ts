import type { Event } from '../facts/event.js';
import type { Facts } from '../facts/facts.js';
import type { Ingredient } from '../facts/ingredient.js';
import type { Recipe } from '../facts/recipe.js';
import { dishesLike, type StoodIn } from './others.js';

/**
 * The facts that a way out of an event's menu may need, of all of a kitchen: its dishes, their variants, dishes like
 * them, and everything below these or standing in for something in them.
 */
export const neededFor = (event: Event, facts: Facts, stoodIn: StoodIn): Facts => {
  const recipes = new Map<string, Recipe>();
  const ingredients = new Map<string, Ingredient>();
  const open: ({ component: string } | { ingredient: string })[] = [];
  const bases = new Set<string>();
  for (const course of event.courses) {
    for (const { recipe } of course.dishes) {
      open.push({ component: recipe });
      bases.add(recipe).add(facts.recipes.get(recipe)?.variantOf ?? recipe);
    }
    for (const { key } of dishesLike(course, event, facts, stoodIn)) open.push({ component: key });
  }
  for (const { key, variantOf } of facts.recipes.values())
    if (bases.has(key) || (variantOf !== null && bases.has(variantOf))) open.push({ component: key });
  for (let item = open.pop(); item; item = open.pop()) {
    if ('component' in item) {
      const recipe = facts.recipes.get(item.component);
      if (!recipe || recipes.has(recipe.key)) continue;
      recipes.set(recipe.key, recipe);
      open.push(...recipe.lines.map((line) => line.item));
    } else {
      const ingredient = facts.ingredients.get(item.ingredient);
      if (!ingredient || ingredients.has(ingredient.key)) continue;
      ingredients.set(ingredient.key, ingredient);
      open.push(...ingredient.substitutes.map((one) => one.item));
    }
  }
  // In the order of the whole, so that the same is found first.
  const inOrder = <T>(all: ReadonlyMap<string, T>, some: ReadonlyMap<string, T>) =>
    new Map([...all].filter(([key]) => some.has(key)));
  return {
    ...facts,
    recipes: inOrder(facts.recipes, recipes),
    ingredients: inOrder(facts.ingredients, ingredients),
  };
};
