import type { Recipe } from '../facts/recipe.js';
import { recipeOf } from '../lookup.js';
import type { Book } from './book.js';
import { itemsOf } from './items.js';

/**
 * Visits every recipe of a kitchen that is not written down, each after the components in it, and soon after its lines
 * were looked through, so that they are still in the processor's cache; a visit writes it down. A loop is our own
 * mistake and throws.
 */
export const componentsFirst = (book: Book, visit: (recipe: Recipe) => void): void => {
  const open = new Set<Recipe>();
  const isWritten = (recipe: Recipe) => book.numberOf(itemsOf(recipe).own) >= 0;
  for (const root of book.facts.recipes.values()) {
    if (isWritten(root)) continue;
    const path = [root];
    for (let recipe = path.at(-1); recipe; recipe = path.at(-1)) {
      const waits = componentsOf(recipe, book);
      if (waits.length === 0) {
        path.pop();
        open.delete(recipe);
        if (!isWritten(recipe)) visit(recipe);
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
const componentsOf = (recipe: Recipe, book: Book): readonly Recipe[] => {
  let found: readonly Recipe[] = none;
  const items = itemsOf(recipe).of;
  for (let i = 0; i < items.length; i += 1) {
    if (items[i]! >= 0 || book.numberOf(-1 - items[i]!) >= 0) continue;
    const { item } = recipe.lines[i]!;
    if ('component' in item) found = [...found, recipeOf(item.component, book.facts)];
  }
  return found;
};
