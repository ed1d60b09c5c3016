import type { Rational } from '../core/quantity/rational.js';
import type { Format } from './format.js';

/** "up 8.0%", "down 3.1%", "as before"; nothing where it isn't known. */
export const upOrDown = (percent: Rational | undefined, f: Format): string => {
  if (!percent) return '';
  if (percent.isZero) return 'as before';
  return percent.sign > 0 ? `up ${f.percent(percent)}` : `down ${f.percent(percent.negated())}`;
};

/** "£19.50 more", "£5.00 less", "the same"; nothing where it isn't known. */
export const moreOrLess = (minor: number | undefined, f: Format): string => {
  if (minor === undefined) return '';
  if (minor === 0) return 'the same';
  return minor > 0 ? `${f.money(minor)} more` : `${f.money(-minor)} less`;
};
