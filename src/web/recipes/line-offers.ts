import { cookedWays } from '../../store/cooked.js';
import type { Db } from '../../store/schema.js';
import { type Form, rows, text } from '../form.js';
import type { Items } from './items.js';
import { isFresh } from './lines.js';

/** What is offered for a line whose name is not known yet: names that are near, or an ingredient of that name. */
export type Offer = { near: readonly string[]; name: string; fresh: boolean } | undefined;

export type LineOffers = {
  offers: Offer[];
  /** How many lines name what there is not yet. */
  open: number;
  /** Ways each line's ingredient is known to be cooked. */
  ways: (readonly string[])[];
};

/** What each line of a recipe's form is offered. */
export const lineOffers = async (form: Form, items: Items, db: Db): Promise<LineOffers> => {
  const lines = rows(form, 'lines');
  const offers = lines.map((row) => offerFor(row, items));
  const ingredients = lines.map((row) => ingredientOf(row, items));
  const ways = await cookedWays(
    db,
    ingredients.filter((one) => one !== undefined),
  );
  return {
    offers,
    open: offers.filter((offer) => offer?.fresh === false).length,
    ways: ingredients.map((one) => ways.get(one ?? '') ?? []),
  };
};

/** The key of the ingredient that a line names; undefined where it names none there is. */
const ingredientOf = (row: Form, items: Items): string | undefined => {
  const found = items.find(text(row, 'item').trim());
  return 'item' in found && 'ingredient' in found.item ? found.item.ingredient : undefined;
};

const offerFor = (row: Form, items: Items): Offer => {
  const name = text(row, 'item').trim();
  const found = name ? items.find(name) : undefined;
  if (!found || !('near' in found)) return undefined;
  return { near: found.near, name, fresh: isFresh(row) };
};
