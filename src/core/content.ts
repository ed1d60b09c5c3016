import type { Facts } from './facts/facts.js';
import type { Ingredient } from './facts/ingredient.js';
import { folded } from './near-names.js';

/** What an ingredient is, with a label read as far as it was: whether one of some others is in it. */
export type Content = 'in' | 'unknown' | 'not-in';

/**
 * Whether an ingredient is one of those named by key, is called so too ("Kiwis, green"), or has one of them on its
 * label by its name. Of an ingredient of which nothing was ever said, or whose words are those of a pack before, nobody
 * knows. Where somebody could be harmed (`asList`), marks of a label alone do not tell either: only its words list more
 * than the allergens of a law.
 */
export const contentOf = (
  ingredient: Ingredient,
  keys: readonly string[],
  facts: Facts,
  asList = false,
): Content => {
  if (keys.includes(ingredient.key)) return 'in';
  const { notBought, labelText, labelDate, allergens } = ingredient;
  const names = keys.flatMap((key) => facts.ingredients.get(key)?.name ?? []);
  const called = (name: string) =>
    asList ? isNamed(name, ingredient.name) : generalName(name) === generalName(ingredient.name);
  if (names.some((name) => called(name) || (labelText !== '' && isNamed(name, labelText)))) return 'in';
  if (notBought) return 'not-in';
  if (labelText !== '') return labelDate === null ? 'unknown' : 'not-in';
  const said = Object.values(allergens);
  if (asList && (said.length === 0 || said.some(({ source }) => source !== 'cook'))) return 'unknown';
  return isBlank(ingredient) ? 'unknown' : 'not-in';
};

const isBlank = ({ allergens, traits }: Ingredient): boolean =>
  Object.keys(allergens).length === 0 && Object.values(traits).every((known) => known === 'unknown');

/** What is meant by a name in general: "Onions, red" is an onion. */
export const generalName = (name: string): string => folded(name.split(/[,(]/)[0]!);

/** Whether a text names something by what it is called in general. */
export const isNamed = (name: string, text: string): boolean => {
  const wanted = generalName(name);
  return wanted !== '' && ` ${folded(text)} `.includes(` ${wanted} `);
};
