import type { Ingredient, Pack } from './facts/ingredient.js';
import { normalName } from './names.js';
import { preferredPack } from './weighing.js';

type Allergens = Ingredient['allergens'];

/**
 * Whether a change of packs puts what was read from a label in doubt: another pack is preferred, or none any more, so
 * that nobody knows which is opened; or one has another brand, or, without a brand, another supplier. How many
 * statements were read from a label; 0 when nothing is in doubt.
 */
export const labelInDoubt = (before: Ingredient, after: Ingredient): number => {
  const [was, is] = [preferredPack(before), preferredPack(after)];
  const other = before.packs.length > 0 && was?.key !== is?.key;
  const rebranded = before.packs.some((pack) => {
    const now = after.packs.find(({ key }) => key === pack.key);
    return now && !isSameProduct(pack, now);
  });
  if (!other && !rebranded) return 0;
  return Math.max(readFromLabel(before.allergens), before.labelDate === null ? 0 : 1);
};

type Product = Pick<Pack, 'brand' | 'supplier'>;

/** Of the same brand; where none is said, from the same supplier, as far as that was said. */
const isSameProduct = (was: Product, is: Product): boolean =>
  normalName(was.brand) === normalName(is.brand) &&
  (is.brand.trim() !== '' ||
    was.supplier.trim() === '' ||
    normalName(was.supplier) === normalName(is.supplier));

const readFromLabel = (allergens: Allergens): number =>
  Object.values(allergens).filter(({ source }) => source === 'label').length;

type Label = Pick<Ingredient, 'allergens' | 'labelDate'>;

/**
 * What a label said is not known any more, and its words are of a pack before; what stands in the cook's word or by
 * reference stays. Facts that diets turn on have no source, so none of them is a no any more: another brand may have
 * rennet or gelatine in it.
 */
export const labelForgotten = ({
  allergens,
  traits,
}: Pick<Ingredient, 'allergens' | 'traits'>): Label & Pick<Ingredient, 'traits'> => ({
  allergens: Object.fromEntries(Object.entries(allergens).filter(([, { source }]) => source !== 'label')),
  labelDate: null,
  traits: Object.fromEntries(Object.entries(traits).filter(([, known]) => known === 'yes')),
});

/** What a label said stands as it did, read again on a day. */
export const labelReadAgain = (
  { allergens, labelDate, labelText }: Label & Pick<Ingredient, 'labelText'>,
  date: string,
  by: string,
): Label => ({
  allergens: Object.fromEntries(
    Object.entries(allergens).map(([id, entry]) => [
      id,
      entry.source === 'label' ? { ...entry, date, by } : entry,
    ]),
  ),
  labelDate: labelText === '' ? labelDate : date,
});

/** The pack a label is on, so that a photograph tells whether it is of the one bought now. */
export const packOfLabel = (ingredient: Ingredient): string => {
  const pack = preferredPack(ingredient);
  return pack ? `${pack.key} ${normalName(pack.brand)}`.trim() : '';
};

/** Whether a photograph shows the label of another pack than the one bought now, and that label was not read since. */
export const isOfPackBefore = (
  { pack, taken }: { pack: string; taken: string },
  ingredient: Ingredient,
): boolean =>
  pack !== packOfLabel(ingredient) && !(ingredient.labelDate !== null && ingredient.labelDate >= taken);
