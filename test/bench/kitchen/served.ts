import type { z } from 'zod';
import type { workbook } from '../../../src/core/facts/facts.js';
import type { EventIn } from './events.js';

type Today = Pick<z.input<typeof workbook>, 'kitchen' | 'places' | 'recipes' | 'ingredients'>;

/** An event that is done, with what was served kept in it, as marking it done does. */
export const withServed = (event: EventIn, { kitchen, places, ...today }: Today): EventIn => {
  const all = new Map(today.recipes.map((recipe) => [recipe.key, recipe]));
  const recipes = new Set<Today['recipes'][number]>();
  const take = (key: string) => {
    const recipe = all.get(key)!;
    recipes.add(recipe);
    for (const { item } of recipe.lines ?? []) if ('component' in item) take(item.component);
  };
  for (const { dishes = [] } of event.courses ?? []) for (const { recipe } of dishes) take(recipe);
  const lines = [...recipes].flatMap((recipe) => recipe.lines ?? []);
  const used = new Set(lines.flatMap(({ item }) => ('ingredient' in item ? [item.ingredient] : [])));
  const ingredients = today.ingredients.filter(({ key }) => used.has(key));
  return { ...event, served: { date: event.date, kitchen, places, recipes: [...recipes], ingredients } };
};
