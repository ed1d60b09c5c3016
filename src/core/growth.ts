import type { Line } from './facts/recipe.js';
import { Rational } from './quantity/rational.js';

const two = Rational.of(2);

/** Canadian Spice Association, "Spice usage": what each further multiple adds to twice the base. */
const further: Partial<Record<Line['scales'], Rational>> = {
  herb: Rational.of(1, 2),
  chilli: Rational.of(1, 4),
};

/**
 * How many times its base a line is at so many batches, exact: straight; herbs and hot chilli straight to twice the
 * recipe and then a half or a quarter of the base for each further one; fixed amounts once for each batch begun.
 */
export const growth = (scales: Line['scales'], batches: Rational): Rational => {
  if (scales === 'batch') return batches.roundedUp();
  const slope = further[scales];
  return slope && batches.compare(two) > 0 ? two.plus(batches.minus(two).times(slope)) : batches;
};

/** A line's amount at so many batches, exact; by the piece, rounded up to whole ones, and of a dozen each single one counts. */
export const grown = (base: Rational, unit: string, scales: Line['scales'], batches: Rational): Rational => {
  const amount = base.times(growth(scales, batches));
  if (scales !== 'pieces') return amount;
  if (unit !== 'dozen') return amount.roundedUp();
  const dozen = Rational.of(12);
  return amount.times(dozen).roundedUp().over(dozen);
};
