import type { Facts } from './facts/facts.js';
import type { Ingredient } from './facts/ingredient.js';

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

/** "Onions, red" is named by "water, onion, salt": by what stands before the first comma or bracket, one or several. */
const isNamed = (name: string, label: string): boolean => {
  const head = name.toLowerCase().split(/[,(]/)[0]!.trim();
  if (head === '') return false;
  const one = head.replace(/(?<=oe|sh|ch|x)s$|(?<=\p{L}{2}[^s])s$/u, '').replace(/(?<=o|sh|ch|x)e$/, '');
  const word = one.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replaceAll(/\s+/g, '\\s+');
  return new RegExp(`(?<!\\p{L})${word}(e?s)?(?!\\p{L})`, 'u').test(label.toLowerCase());
};
