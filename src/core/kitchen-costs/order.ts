import type { Facts } from '../facts/facts.js';
import type { Recipe } from '../facts/recipe.js';
import { recipeOf } from '../lookup.js';

/**
 * Visits every recipe of a kitchen, each after the components in it, and soon after its lines were looked through, so
 * that they are still in the processor's cache; a loop is our own mistake and throws.
 */
export const componentsFirst = (
  facts: Facts,
  visited: { has(key: string): boolean },
  visit: (recipe: Recipe) => void,
): void => {
  const open = new Set<Recipe>();
  for (const root of facts.recipes.values()) {
    const path = [root];
    for (let recipe = path.at(-1); recipe; recipe = path.at(-1)) {
      if (open.has(recipe)) {
        visit(recipe);
        open.delete(recipe);
      }
      if (visited.has(recipe.key)) {
        path.pop();
        continue;
      }
      open.add(recipe);
      for (const { item } of recipe.lines) {
        if (!('component' in item) || visited.has(item.component)) continue;
        const component = recipeOf(item.component, facts);
        if (open.has(component)) throw new Error(`recipe ${component.key} contains itself`);
        path.push(component);
      }
    }
  }
};
