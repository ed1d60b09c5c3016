import type { Rational } from '../quantity/rational.js';

/*
 * Costs near enough to round. Floats are quick and exact fractions are slow, so every cost is first worked out as a
 * float together with how far it may be off; the float is used only to see which whole penny the exact cost rounds to,
 * and only where that is beyond doubt. Anywhere near a half penny the exact fraction decides.
 *
 * Why the bound holds. u is 2^-53, and one operation on floats in the normal range gives the exact result times
 * (1 + d), |d| <= u. Amounts and prices are never negative, so nothing cancels: a sum is off by no larger share than
 * its parts are, plus u for each addition. The nearest float of a fraction is off by at most 3 u (numerator,
 * denominator, quotient). A sum of n parts, each a product, is therefore off by at most
 * (worst part + 3 + 1 + n) u, but for terms in u^2, which the bound in `minorNear` outweighs. Figures outside
 * 1e-100 to 1e100, sums outside 1e-150 to 1e150, have no float here at all (NaN), so that no product leaves the normal
 * range; a float of zero is a true zero.
 */

const u = 2 ** -53;

/** Units of u that the nearest float of a fraction may be off by. */
export const offNearest = 3;

/** The float nearest to a fraction that is not negative; NaN where floats are not to be trusted with it. */
export const nearest = (value: Rational): number => {
  if (value.isZero) return 0;
  const near = value.toNumber();
  return near >= 1e-100 && near <= 1e100 ? near : Number.NaN;
};

/** A sum that floats can be trusted with, else NaN. */
export const trusted = (sum: number): number =>
  sum === 0 || (sum >= 1e-150 && sum <= 1e150) ? sum : Number.NaN;

/**
 * The whole minor units, halves up, that a cost rounds to that lies within `off` units of u of `near`; undefined where
 * the float can't tell.
 */
export const minorNear = (near: number, off: number): number | undefined => {
  if (!(near < 1e15) || !(off < 1e9)) return undefined;
  const margin = (near + 1) * (off + 8) * u * 1.001;
  const least = Math.floor(near - margin + 0.5);
  return least === Math.floor(near + margin + 0.5) ? least : undefined;
};
