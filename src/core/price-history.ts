import type { Ingredient, Pack, Price } from './facts/ingredient.js';
import type { Kitchen } from './facts/kitchen.js';
import { exact } from './quantity/amount.js';
import { Rational } from './quantity/rational.js';
import { type Base, baseOf, inUnit, quantity } from './quantity/units.js';
import { unitFor } from './unit-price.js';
import { boughtIn, isMissing, latestPrice, preferredPack } from './weighing.js';

type Ways = Pick<Kitchen, 'units' | 'cup'>;

/** A price of a pack, with what one kilo, litre or piece cost at it in minor units, exact. */
export type PricePoint = {
  price: Price;
  each: Rational;
  /** Per cent more than at the price before of the same pack, below 0 for less; undefined for the first, or after a price of 0. */
  since: Rational | undefined;
};

/** The prices of one pack, the first day first; of one day, the last entered last. */
export type PackPrices = { pack: Pack; points: PricePoint[] };

/** Packs whose prices compare, for they are worked out by the same unit. */
export type PriceLine = { unit: string; packs: PackPrices[] };

/**
 * What an ingredient cost over time, by the unit of the pack that lines are priced at (kilo, litre or piece; pound or
 * quart where US units are shown). A pack sold otherwise is turned into that unit by the density and weights known;
 * where they aren't, it stands in a line of its own unit. Packs that never had a price are left out.
 */
export const priceHistory = (ingredient: Ingredient, ways: Ways): PriceLine[] => {
  const lines: PriceLine[] = [];
  const first = preferredPack(ingredient) ?? ingredient.packs[0];
  for (const pack of ingredient.packs) {
    const found = first && packPrices(ingredient, pack, first, ways);
    if (!found) continue;
    const line = lines.find(({ unit }) => unit === found.unit);
    if (line) line.packs.push(found);
    else lines.push({ unit: found.unit, packs: [found] });
  }
  return lines;
};

const packPrices = (
  ingredient: Ingredient,
  pack: Pack,
  like: Pack,
  ways: Ways,
): (PackPrices & { unit: string }) | undefined => {
  const size = quantity(exact(pack.size.amount), pack.size.unit, ways.cup);
  if (size.value.isZero || pack.prices.length === 0) return undefined;
  const wanted: Base = baseOf(like.size.unit);
  const turned = boughtIn(ingredient, size, wanted);
  const base = isMissing(turned) ? size.base : wanted;
  const unit = unitFor(base, ways.units);
  const held = inUnit(isMissing(turned) ? size.value : turned, unit, ways.cup);
  const points: PricePoint[] = [];
  for (const price of inOrder(pack.prices)) {
    const each = Rational.of(price.price).over(held);
    points.push({ price, each, since: percentMore(points.at(-1)?.each, each) });
  }
  return { pack, points, unit };
};

const inOrder = (prices: readonly Price[]): Price[] =>
  [...prices].sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));

/** Per cent that a figure is more than one before, below 0 for less; undefined where that was nothing or isn't known. */
export const percentMore = (before: Rational | undefined, after: Rational): Rational | undefined =>
  before && !before.isZero ? after.minus(before).over(before).times(Rational.of(100)) : undefined;

/** The price of a pack that stood on a day: of the latest day up to it, the last entered. */
export const priceOn = (pack: Pack, date: string): Price | undefined =>
  latestPrice({ ...pack, prices: pack.prices.filter((price) => price.date <= date) });

/** A change between the price that stood on a day and the one that stands now. */
export type PriceMove = {
  ingredient: Ingredient;
  pack: Pack;
  unit: string;
  before: PricePoint;
  after: PricePoint;
  percent: Rational | undefined;
};

/** How the price that lines are priced at moved since a day; undefined where none stood on it, or no pack stands. */
export const movedSince = (ingredient: Ingredient, date: string, ways: Ways): PriceMove | undefined => {
  const pack = preferredPack(ingredient);
  const before = pack && priceOn(pack, date);
  const after = pack && latestPrice(pack);
  if (!before || !after) return undefined;
  const found = packPrices(ingredient, pack, pack, ways);
  const at = (price: Price) => found?.points.find((point) => point.price === price);
  const [was, is] = [at(before), at(after)];
  if (!found || !was || !is) return undefined;
  return {
    ingredient,
    pack,
    unit: found.unit,
    before: was,
    after: is,
    percent: percentMore(was.each, is.each),
  };
};

/** What moved since a day, the largest per cent up or down first, and what had its first price since then. */
export type PriceMoves = { moves: PriceMove[]; first: Ingredient[] };

/** The ingredients whose price for lines isn't what it was on a day. */
export const priceMoves = (ingredients: readonly Ingredient[], date: string, ways: Ways): PriceMoves => {
  const moves: PriceMove[] = [];
  const first: Ingredient[] = [];
  for (const ingredient of ingredients) {
    const pack = preferredPack(ingredient);
    if (ingredient.notBought || !pack || !latestPrice(pack)) continue;
    const move = movedSince(ingredient, date, ways);
    if (!move) first.push(ingredient);
    else if (!move.before.each.equals(move.after.each)) moves.push(move);
  }
  return { moves: moves.sort(bySize), first };
};

const bySize = (a: PriceMove, b: PriceMove): number =>
  size(b).compare(size(a)) || (a.ingredient.key < b.ingredient.key ? -1 : 1);

/** A price that was nothing moved beyond every per cent. */
const size = ({ percent }: PriceMove): Rational =>
  percent === undefined ? Rational.of(1_000_000_000) : percent.sign < 0 ? percent.negated() : percent;
