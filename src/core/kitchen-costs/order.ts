import type { Facts } from '../facts/facts.js';
import type { Recipe } from '../facts/recipe.js';
import { recipeOf } from '../lookup.js';

/** Every recipe of a kitchen, each after the components in it; a loop is our own mistake and throws. */
export const componentsFirst = (facts: Facts): Recipe[] => {
  const order: Recipe[] = [];
  const met = new Map<Recipe, 'open' | 'done'>();
  for (const root of facts.recipes.values()) {
    const path = [root];
    for (let recipe = path.at(-1); recipe; recipe = path.at(-1)) {
      if (met.get(recipe) !== undefined) {
        path.pop();
        if (met.get(recipe) === 'open') order.push(recipe);
        met.set(recipe, 'done');
        continue;
      }
      met.set(recipe, 'open');
      for (const { item } of recipe.lines) {
        if (!('component' in item)) continue;
        const component = recipeOf(item.component, facts);
        if (met.get(component) === 'open') throw new Error(`recipe ${component.key} contains itself`);
        if (!met.has(component)) path.push(component);
      }
    }
  }
  return order;
};
