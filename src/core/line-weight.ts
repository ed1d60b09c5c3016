import type { Ingredient } from './facts/ingredient.js';
import type { Line } from './facts/recipe.js';
import { normalName } from './names.js';
import { exact } from './quantity/amount.js';
import type { Rational } from './quantity/rational.js';
import type { Quantity } from './quantity/units.js';
import { type Missing, statesBought, weigh } from './weighing.js';

type CookedYield = Ingredient['cookedYields'][number];

/** What it weighs once cooked as the line says is not known, or not by the unit of the line. */
export type NotCooked = { missing: 'cooked'; unit: string };
export type Gap = Missing | NotCooked;
type LineWeight = { prepared: Rational | Gap; bought: Quantity | Gap };

/** What one part of an ingredient weighs once cooked in a named way; undefined when nobody has said. */
export const cookedYieldOf = (ingredient: Ingredient, name: string): CookedYield | undefined => {
  const wanted = normalName(name);
  const found = ingredient.cookedYields.find((one) => normalName(one.name) === wanted);
  return found && exact(found.yield).isZero ? undefined : found;
};

/**
 * An ingredient line's amount as the grams it puts into the dish and as it is purchased, exact; what is missing is
 * named. A line that states the weight once cooked puts in that weight.
 */
export const weighLine = (line: Line, ingredient: Ingredient, asked: Quantity): LineWeight =>
  line.stated === 'cooked'
    ? weighCooked(ingredient, asked, line.cooked)
    : weigh(ingredient, asked, statesBought(line, asked.base));

/**
 * Bought = cooked / cooked yield. A yield that starts from the weight bought, with bone and trim, has the trim in it
 * already, so only one that starts from the prepared weight is divided by the edible yield too.
 */
const weighCooked = (ingredient: Ingredient, { value, base }: Quantity, name: string): LineWeight => {
  const missing: NotCooked = { missing: 'cooked', unit: base };
  if (base !== 'g') return { prepared: missing, bought: missing };
  const cooked = cookedYieldOf(ingredient, name);
  if (!cooked) return { prepared: value, bought: missing };
  const raw: Quantity = { value: value.over(exact(cooked.yield)), base };
  return { prepared: value, bought: weigh(ingredient, raw, cooked.from === 'bought').bought };
};
