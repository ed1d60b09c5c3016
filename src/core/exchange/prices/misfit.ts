import type { Ingredient } from '../../facts/ingredient.js';
import type { Kitchen } from '../../facts/kitchen.js';
import { normalName } from '../../names.js';
import { exact } from '../../quantity/amount.js';
import { Rational } from '../../quantity/rational.js';
import { quantity } from '../../quantity/units.js';
import { boughtIn, isMissing, preferredPack } from '../../weighing.js';
import type { Match } from './match.js';
import type { ListRow } from './rows.js';

const mostPrices = 2000;
const mostPacks = 60;

/** Why a new ingredient can't have its name; undefined when it can, or when it is none. */
export const nameTaken = (
  { ingredient }: Match,
  names: ReadonlyMap<string, Ingredient>,
): string | undefined => {
  const there = ingredient.key === null ? names.get(normalName(ingredient.name)) : undefined;
  if (!there) return undefined;
  return there.archived
    ? `${there.name} is archived: bring it back first, or give the new one another name.`
    : `There is an ingredient ${there.name} already: choose it, or give the new one another name.`;
};

/** Why a matched row can't be taken over; undefined when it can. */
export const misfit = (
  row: ListRow,
  { ingredient, pack }: Match,
  kitchen: Pick<Kitchen, 'cup'>,
): string | undefined => {
  if (pack && pack.prices.length >= mostPrices) return `This pack has ${mostPrices} prices already.`;
  if (pack) return undefined;
  if (!row.size) return 'The list says no pack size, and there is no pack under this code yet.';
  if (ingredient.key === null) return undefined;
  if (ingredient.notBought) return `${ingredient.name} is marked as not bought.`;
  if (ingredient.packs.length >= mostPacks) return `${ingredient.name} has ${mostPacks} packs already.`;
  const used = preferredPack(ingredient);
  if (!used) return undefined;
  const base = (unit: string) => quantity(Rational.one, unit, kitchen.cup);
  const held = quantity(exact(row.size.amount), row.size.unit, kitchen.cup);
  const found = boughtIn(ingredient, held, base(used.size.unit).base);
  if (!isMissing(found)) return undefined;
  const lacks =
    found.missing === 'density'
      ? 'its density is'
      : found.missing === 'yield'
        ? 'its edible yield is'
        : `what one ${found.unit} weighs is`;
  return `A pack in ${row.size.unit} can’t be compared with the pack of ${ingredient.name} in ${used.size.unit}: ${lacks} not known.`;
};
