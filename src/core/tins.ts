import type { Tin } from './facts/recipe.js';
import { exact } from './quantity/amount.js';
import { Rational } from './quantity/rational.js';
import { inWords } from './quantity/show.js';
import { asMixed } from './quantity/shown.js';

/**
 * π as a fraction, good to sixteen places: between round tins it cancels, and between a round and a square one it is
 * off by less than one part in 10¹⁶. Nothing is rounded after it.
 */
export const pi = Rational.of(245_850_922, 78_256_779);

/** The international inch: 2.54 cm exactly (NIST Handbook 44, appendix C). */
const inch = Rational.parse('2.54');

/** A side or depth of a tin in centimetres, exact. */
export const centimetres = (side: string, { unit }: Pick<Tin, 'unit'>): Rational =>
  unit === 'in' ? exact(side).times(inch) : exact(side);

const square = (side: Rational): Rational => side.times(side);

const disc = (across: Rational): Rational => square(across).times(pi).over(Rational.of(4));

/** The floor of one tin in square centimetres, with the π above. */
export const floorOf = (tin: Tin): Rational => {
  const cm = (side: string) => centimetres(side, tin);
  if (tin.shape === 'round') return disc(cm(tin.diameter));
  if (tin.shape === 'ring') return disc(cm(tin.diameter)).minus(disc(cm(tin.hole)));
  return tin.shape === 'square' ? square(cm(tin.side)) : cm(tin.length).times(cm(tin.width));
};

/** The floor of all the tins that are meant, in square centimetres. */
const floorsOf = (tin: Tin): Rational => floorOf(tin).times(Rational.of(tin.count));

/** Batches that fill other tins as deep as one batch fills the recipe's own: area for area and tin for tin. */
export const batchesForTin = (own: Tin, other: Tin): Rational => floorsOf(other).over(floorsOf(own));

/** How full tins come out: as deep as in the recipe's own where `deeper` is one; `over` where it is more than they hold. */
export type Filled = { tin: Tin; deeper: Rational; over: { needs: Rational; has: Rational } | undefined };

/**
 * So many batches in other tins than the recipe's own: how many times as deep they stand, and, where the depth of
 * both is known and the recipe is taken to fill its own, the depth in cm that they need and have when it is too much.
 */
export const filled = (own: Tin, batches: Rational, tin: Tin): Filled => {
  const deeper = batches.over(batchesForTin(own, tin));
  if (own.depth === null || tin.depth === null) return { tin, deeper, over: undefined };
  const needs = centimetres(own.depth, own).times(deeper);
  const has = centimetres(tin.depth, tin);
  return { tin, deeper, over: needs.compare(has) > 0 ? { needs, has } : undefined };
};

/** Whole tins of the recipe's own that an amount needs, and how full the last of them is: above 0, up to 1. */
export type TinsNeeded = { tin: Tin; whole: bigint; last: Rational };

/** The recipe's own tins for so many batches, rounded up to whole ones; none for no batch. */
export const tinsFor = (tin: Tin, batches: Rational): TinsNeeded => {
  const needed = batches.times(Rational.of(tin.count));
  const whole = needed.ceil();
  return { tin, whole, last: needed.minus(Rational.of(whole)).plus(Rational.one) };
};

/** A side as one reads it: inches in fractions, centimetres in decimals where they end. */
const read = (side: string, unit: Tin['unit']): string =>
  unit === 'in' || side.includes('/') ? inWords({ ...asMixed(exact(side)), unit: 'each' }) : side;

const sidesOf = (tin: Tin): string[] => {
  if (tin.shape === 'round') return [tin.diameter];
  if (tin.shape === 'ring') return [tin.diameter, tin.hole];
  return tin.shape === 'square' ? [tin.side] : [tin.length, tin.width];
};

/** The sides of a tin as one types them: "23 cm", "9 × 13 in", of a ring across and across the hole, "24 × 8 cm". */
export const sidesInWords = (tin: Tin): string =>
  `${sidesOf(tin)
    .map((side) => read(side, tin.unit))
    .join(' × ')} ${tin.unit}`;

/** A depth in the tin's own unit, "7 cm", from centimetres; to a tenth. */
export const depthInWords = (cm: Rational, { unit }: Pick<Tin, 'unit'>): string =>
  `${(unit === 'in' ? cm.over(inch) : cm).toFixed(1).replace(/\.0$/, '')} ${unit}`;

/** So many tins of a kind: "1 round tin of 23 cm", "2 tins of 9 × 13 in". */
export const tinsInWords = (tin: Tin, count: number | bigint = tin.count): string => {
  const kind = tin.shape === 'rectangular' ? 'tin' : `${tin.shape} tin`;
  return `${count} ${kind}${Number(count) === 1 ? '' : 's'} of ${sidesInWords(tin)}`;
};
