import type { Ingredient, Pack, Price } from './facts/ingredient.js';
import type { Line } from './facts/recipe.js';
import { exact } from './quantity/amount.js';
import type { Rational } from './quantity/rational.js';
import type { Base, Quantity } from './quantity/units.js';

/** A figure, or the name of the fact that it waits for. */
export type Missing = { missing: 'yield' | 'density' | 'weight'; unit: string };
export type Weighed = { prepared: Rational | Missing; bought: Quantity | Missing };

export const isMissing = <T extends object>(value: T): value is Extract<T, { missing: string }> =>
  'missing' in value;

/** A figure to divide by. Zero can't be saved as one; where it slipped in all the same, it is not known. */
const positive = (text: string | undefined): Rational | undefined => {
  const value = text === undefined ? undefined : exact(text);
  return value?.isZero ? undefined : value;
};

const yieldOf = (ingredient: Ingredient): Rational | undefined => positive(ingredient.edibleYield?.yield);

const density = (ingredient: Ingredient): Rational | undefined => positive(ingredient.density?.gramsPerMl);

const weightOf = (ingredient: Ingredient, unit: string): { grams: Rational; bought: boolean } | undefined => {
  const weight = ingredient.weights.find((w) => w.unit === unit);
  const grams = positive(weight?.grams);
  return weight && grams && { grams, bought: weight.of === 'bought' };
};

/** Grams of one piece as bought: its stated bought weight, else its edible weight over the edible yield. */
const pieceBought = (ingredient: Ingredient, unit: string): Rational | Missing => {
  const weight = weightOf(ingredient, unit);
  if (!weight) return { missing: 'weight', unit };
  if (weight.bought) return weight.grams;
  const y = yieldOf(ingredient);
  return y ? weight.grams.over(y) : { missing: 'yield', unit };
};

const piecePrepared = (ingredient: Ingredient, unit: string): Rational | Missing => {
  const weight = weightOf(ingredient, unit);
  if (!weight) return { missing: 'weight', unit };
  if (!weight.bought) return weight.grams;
  const y = yieldOf(ingredient);
  return y ? weight.grams.times(y) : { missing: 'yield', unit };
};

/** Which weight a line's amount states: a count is pieces as bought, weight and volume are the prepared amount. */
export const statesBought = (line: Line, base: Base): boolean =>
  line.stated === 'usual' ? base !== 'g' && base !== 'ml' : line.stated === 'bought';

/**
 * An ingredient line's amount as prepared grams and as it is purchased (in grams, millilitres or pieces), exact.
 * EP = AP × yield and AP = EP / yield (food-service factor method). What is missing is named, never assumed.
 */
export const weigh = (ingredient: Ingredient, asked: Quantity, bought: boolean): Weighed => {
  const { value, base } = asked;
  if (base !== 'g' && base !== 'ml') {
    const piece = piecePrepared(ingredient, base);
    return { prepared: isMissing(piece) ? piece : value.times(piece), bought: asked };
  }
  const y = yieldOf(ingredient);
  if (!y)
    return bought
      ? { prepared: { missing: 'yield', unit: base }, bought: asked }
      : preparedOnly(ingredient, asked);
  const prepared = grams(ingredient, { value: bought ? value.times(y) : value, base });
  return { prepared, bought: { value: bought ? value : value.over(y), base } };
};

const preparedOnly = (ingredient: Ingredient, asked: Quantity): Weighed => ({
  prepared: grams(ingredient, asked),
  bought: { missing: 'yield', unit: asked.base },
});

const grams = (ingredient: Ingredient, { value, base }: Quantity): Rational | Missing => {
  if (base === 'g') return value;
  const d = density(ingredient);
  return d ? value.times(d) : { missing: 'density', unit: base };
};

/** A purchased amount in another base: volume by density only, pieces by their weights only. Exact. */
export const boughtIn = (ingredient: Ingredient, amount: Quantity, base: Base): Rational | Missing => {
  if (amount.base === base) return amount.value;
  const heavy = boughtGrams(ingredient, amount);
  if (isMissing(heavy) || base === 'g') return heavy;
  if (base === 'ml') {
    const d = density(ingredient);
    return d ? heavy.over(d) : { missing: 'density', unit: amount.base };
  }
  const piece = pieceBought(ingredient, base);
  return isMissing(piece) ? piece : heavy.over(piece);
};

const boughtGrams = (ingredient: Ingredient, { value, base }: Quantity): Rational | Missing => {
  if (base === 'g' || base === 'ml') return grams(ingredient, { value, base });
  const piece = pieceBought(ingredient, base);
  return isMissing(piece) ? piece : value.times(piece);
};

/** The pack lines are priced at: the preferred one, else the only one. */
export const preferredPack = (ingredient: Ingredient): Pack | undefined =>
  ingredient.packs.find((pack) => pack.preferred) ??
  (ingredient.packs.length === 1 ? ingredient.packs[0] : undefined);

/** The price that stands: of the latest day, the last entered. */
export const latestPrice = (pack: Pack): Price | undefined => {
  let latest: Price | undefined;
  for (const price of pack.prices) if (!latest || price.date >= latest.date) latest = price;
  return latest;
};
