import { type AllergenList, allergenName } from './allergens.js';
import type { Ingredient } from './facts/ingredient.js';
import { plainProduce } from './label.js';
import { glued, readLabel } from './label-text.js';
import { listed } from './problems.js';

/** Whether nothing at all is known of what is in an ingredient. */
export const isBlank = ({ archived, allergens, labelText }: Ingredient): boolean =>
  !archived && labelText === '' && Object.keys(allergens).length === 0;

/**
 * Why an ingredient cannot be plain produce in anybody's word, by its name alone: it names an allergen, or leaves open
 * what it is made of. Empty where nothing speaks against it.
 */
export const notPlain = ({ name }: Ingredient): string => {
  // On a label brackets say what something is of; in a name, "Stock (beef)", they do not.
  const { named, aside, unsettled } = readLabel(name.replace(/[()[\]]/g, ','));
  if (named.length > 0)
    return `Its name says ${listed(named.map(({ id }) => allergenName(id)))}: mark its label.`;
  const open = [...unsettled, ...aside].find(({ why }) => why === glued || why.endsWith('does not say'));
  return open ? `Read its label: “${open.words}” ${open.why}.` : '';
};

/** Many at once free of the whole list, in the cook's word; those of which something is known are left as they are. */
export const allPlain = (all: readonly Ingredient[], list: AllergenList, by: string): Ingredient[] =>
  all.map((one) =>
    isBlank(one) && notPlain(one) === '' ? { ...one, allergens: plainProduce(one, list, by) } : one,
  );
