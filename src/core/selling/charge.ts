import type { Discount, SellingPrice, Tax } from '../facts/price.js';
import { toMinor } from '../money.js';
import { exact } from '../quantity/amount.js';
import { Rational } from '../quantity/rational.js';
import { type Taxed, taxOf } from './tax.js';

/** `gross` is what the lines add up to; `minimum` is added to it, then `discount` taken off, then comes tax. */
export type Charge = Taxed & { gross: number; minimum: number; discount: number };

/** How a price goes on from its lines. */
export type Ways = Pick<SellingPrice, 'minimum' | 'discount'>;

/**
 * What lines come to, in minor units, in this order: their sum, what is added to reach the minimum, what is taken off
 * (a per cent to the nearest minor unit, halves up, and never more than there is), tax on what is left.
 */
export const charge = (lines: readonly number[], ways: Ways, tax: Tax | null): Charge => {
  const gross = lines.reduce((a, b) => a + b, 0);
  const minimum = Math.max(0, (ways.minimum ?? 0) - gross);
  const discount = Math.min(gross + minimum, offOf(ways.discount, gross + minimum));
  return { gross, minimum, discount, ...taxOf(minimum ? [...lines, minimum] : lines, tax, discount) };
};

const offOf = (discount: Discount | null, from: number): number => {
  if (!discount) return 0;
  return 'off' in discount ? discount.off : toMinor(Rational.of(from).times(part(discount.percent)));
};

const part = (percent: string): Rational => exact(percent).over(Rational.of(100));

/**
 * What lines must come to, exact, so that a price without tax is reached after the discount; undefined where the
 * discount leaves nothing. Roundings on the way are not in it.
 */
export const grossFor = (net: Rational, { discount }: Ways, tax: Tax | null): Rational | undefined => {
  const named = tax?.included ? net.times(Rational.one.plus(part(tax.rate))) : net;
  if (!discount) return named;
  if ('off' in discount) return named.plus(Rational.of(discount.off));
  const left = Rational.one.minus(part(discount.percent));
  return left.sign > 0 ? named.over(left) : undefined;
};
