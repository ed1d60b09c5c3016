import type { AllergenItem } from '../allergens.js';
import { listOf, ways } from '../allergens.js';
import type { Facts } from '../facts/facts.js';
import type { AllergenState, Ingredient } from '../facts/ingredient.js';
import type { Recipe } from '../facts/recipe.js';
import { groups } from '../label-entries.js';
import { once } from '../lookup.js';

/**
 * The entries of the list in force for which a recipe is not free by labels alone: for some of what is in it only the
 * cook or a reference says so. What nobody buys, such as tap water, has no label to read.
 */
export const byWordOf = once((recipe: Recipe, facts: Facts): ReadonlySet<string> => {
  const bought = new Set(
    ways(recipe, facts).flatMap(({ ingredient }) => (ingredient.notBought ? [] : [ingredient])),
  );
  const items = listOf(facts.kitchen).items;
  return new Set(items.filter((item) => [...bought].some((one) => isByWord(one, item))).map(({ id }) => id));
});

const isByWord = (ingredient: Ingredient, { members }: AllergenItem): boolean =>
  members.some((id) => {
    const entry = ingredient.allergens[id] ?? freeByGroup(ingredient, id);
    return entry?.state === 'free' && entry.source !== 'label';
  });

const freeByGroup = ({ allergens }: Ingredient, id: string): AllergenState | undefined =>
  groups
    .filter(({ members }) => members.includes(id))
    .map((group) => allergens[group.id])
    .find((entry) => entry?.state === 'free');
