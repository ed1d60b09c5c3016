import type { Ingredient } from './facts/ingredient.js';
import { normalName } from './names.js';
import { preferredPack } from './weighing.js';

type Allergens = Ingredient['allergens'];

/**
 * Whether a change of packs puts what was read from a label in doubt: another pack is preferred, or one has another
 * brand. How many statements were read from a label; 0 when nothing is in doubt.
 */
export const labelInDoubt = (before: Ingredient, after: Ingredient): number => {
  const [was, is] = [preferredPack(before), preferredPack(after)];
  const other = before.packs.length > 0 && is !== undefined && was?.key !== is.key;
  const rebranded = before.packs.some(({ key, brand }) => {
    const now = after.packs.find((pack) => pack.key === key);
    return now && normalName(now.brand) !== normalName(brand);
  });
  return other || rebranded ? readFromLabel(before.allergens) : 0;
};

const readFromLabel = (allergens: Allergens): number =>
  Object.values(allergens).filter(({ source }) => source === 'label').length;

/** What a label said is not known any more; what stands in the cook's word or by reference stays. */
export const labelForgotten = (allergens: Allergens): Allergens =>
  Object.fromEntries(Object.entries(allergens).filter(([, { source }]) => source !== 'label'));

/** What a label said stands as it did, read again on a day. */
export const labelReadAgain = (allergens: Allergens, date: string, by: string): Allergens =>
  Object.fromEntries(
    Object.entries(allergens).map(([id, entry]) => [
      id,
      entry.source === 'label' ? { ...entry, date, by } : entry,
    ]),
  );
