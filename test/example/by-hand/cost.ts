import Fraction from 'fraction.js';
import type { Workbook } from '../../../src/core/facts/facts.js';
import type { Ingredient } from '../../../src/core/facts/ingredient.js';
import type { Line, Recipe } from '../../../src/core/facts/recipe.js';
import { taken } from './lines.js';
import { total } from './tree.js';
import { millilitres, perGram } from './units.js';

export type Need = { prepared: Fraction; bought: Fraction; unit: string; cost: Fraction };

/** Grams as bought of one piece: as weighed when bought, or its prepared weight over the yield. */
const pieceBought = (ingredient: Ingredient, unit: string): Fraction => {
  const piece = ingredient.weights.find((one) => one.unit === unit)!;
  const grams = new Fraction(piece.grams);
  return piece.of === 'bought' ? grams : grams.div(ingredient.edibleYield!.yield);
};

/** What a line needs of its ingredient for so many batches of the recipe it stands in; nothing when to taste. */
export const needOf = (
  line: Line,
  recipe: Recipe,
  batches: Fraction,
  cup: string,
  book: Workbook,
): Need | undefined => {
  if (line.amount === null || !('ingredient' in line.item)) return undefined;
  const { ingredient: key } = line.item;
  const ingredient = book.ingredients.find((one) => one.key === key)!;
  const edible = new Fraction(ingredient.edibleYield!.yield);
  const { amount, unit: counted } = taken(line, recipe, batches);
  const ml = millilitres(counted, cup);
  const grams = perGram[counted] ?? ml?.mul(ingredient.density!.gramsPerMl);
  const way = ingredient.cookedYields.find(({ name }) => name === line.cooked);
  const cooked = line.stated === 'cooked' ? amount.mul(grams!) : undefined;
  const boughtGrams = cooked
    ? cooked.div(way!.yield).div(way!.from === 'bought' ? 1 : edible)
    : !grams
      ? amount.mul(pieceBought(ingredient, counted))
      : line.stated === 'bought'
        ? amount.mul(grams)
        : amount.mul(grams).div(edible);
  const { bought, unit, cost } = priced(ingredient, boughtGrams, book.kitchen.cup);
  return { prepared: cooked ?? boughtGrams.mul(edible), bought, unit, cost };
};

/** The need in the unit the preferred pack is sold in, and its share of that pack's latest price. */
const priced = (ingredient: Ingredient, grams: Fraction, cup: string): Omit<Need, 'prepared'> => {
  const density = ingredient.density?.gramsPerMl;
  if (ingredient.notBought) return { bought: grams.div(density!), unit: 'ml', cost: new Fraction(0) };
  const pack = ingredient.packs.find((one) => one.preferred)!;
  const latest = pack.prices.reduce((a, b) => (b.date >= a.date ? b : a));
  const weight = perGram[pack.size.unit];
  const volume = millilitres(pack.size.unit, cup);
  const one = weight
    ? new Fraction(1)
    : volume
      ? new Fraction(density!)
      : pieceBought(ingredient, pack.size.unit);
  const size = new Fraction(pack.size.amount).mul(weight ?? volume ?? 1);
  const bought = grams.div(one);
  const unit = weight ? 'g' : volume ? 'ml' : pack.size.unit;
  return { bought, unit, cost: bought.div(size).mul(latest.price) };
};

/** Whole minor units: a half goes up. */
export const roundHalfUp = (exact: Fraction): number => Number(exact.add('1/2').floor().valueOf());

/** Splits a whole number over exact parts: each rounds down, then the largest remainders get one more. */
export const allocate = (whole: number, parts: Fraction[]): number[] => {
  const sum = total(parts);
  if (sum.equals(0)) return parts.map(() => 0);
  const ideal = parts.map((part) => part.mul(whole).div(sum));
  const given = ideal.map((one) => Number(one.floor().valueOf()));
  const left = whole - given.reduce((a, b) => a + b, 0);
  const byRemainder = ideal
    .map((one, i) => ({ i, rest: one.sub(one.floor()) }))
    .sort((a, b) => b.rest.compare(a.rest) || a.i - b.i);
  for (const { i } of byRemainder.slice(0, left)) given[i]!++;
  return given;
};
