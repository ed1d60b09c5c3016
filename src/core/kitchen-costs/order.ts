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
  // Few are visited before their turn, and few are soon looked up.
  const early = new Set<Recipe>();
  for (const root of facts.recipes.values()) {
    if (early.has(root)) continue;
    const path = [root];
    for (let recipe = path.at(-1); recipe; recipe = path.at(-1)) {
      const waits = componentsOf(recipe, visited, facts);
      if (waits.length === 0) {
        path.pop();
        open.delete(recipe);
        if (early.has(recipe)) continue;
        if (recipe !== root) early.add(recipe);
        visit(recipe);
        continue;
      }
      open.add(recipe);
      for (const component of waits)
        if (open.has(component)) throw new Error(`recipe ${component.key} contains itself`);
      path.push(...waits);
    }
  }
};

const none: readonly never[] = [];

/** The components of a recipe that are still to be visited. */
const componentsOf = (
  { lines }: Recipe,
  visited: { has(key: string): boolean },
  facts: Facts,
): readonly Recipe[] => {
  let found: readonly Recipe[] = none;
  for (const { item } of lines)
    if ('component' in item && !visited.has(item.component))
      found = [...found, recipeOf(item.component, facts)];
  return found;
};
