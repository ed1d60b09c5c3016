import type { Facts } from './facts/facts.js';
import type { Ingredient } from './facts/ingredient.js';
import { folded } from './near-names.js';

/** What an ingredient is, with a label read as far as it was: whether one of some others is in it. */
export type Content = 'in' | 'unknown' | 'not-in';

/**
 * Whether an ingredient is one of those named by key, or has one of them on its label by its name. Of an ingredient of
 * which nothing was ever said, nobody knows.
 */
export const contentOf = (ingredient: Ingredient, keys: readonly string[], facts: Facts): Content => {
  if (keys.includes(ingredient.key)) return 'in';
  const names = keys.flatMap((key) => facts.ingredients.get(key)?.name ?? []);
  if (ingredient.labelText !== '' && names.some((name) => isNamed(name, ingredient.labelText))) return 'in';
  return isBlank(ingredient) ? 'unknown' : 'not-in';
};

const isBlank = ({ notBought, labelText, allergens, traits }: Ingredient): boolean =>
  !notBought &&
  labelText === '' &&
  Object.keys(allergens).length === 0 &&
  Object.values(traits).every((known) => known === 'unknown');

/** What is meant by a name in general: "Onions, red" is an onion. */
export const generalName = (name: string): string => folded(name.split(/[,(]/)[0]!);

const isNamed = (name: string, label: string): boolean => {
  const wanted = generalName(name);
  return wanted !== '' && ` ${folded(label)} `.includes(` ${wanted} `);
};
