import { exact } from '../quantity/amount.js';
import { Rational } from '../quantity/rational.js';

const hundred = Rational.of(100);

/**
 * The price without tax that leaves a margin, in minor units, exact: cost / (1 − margin). Undefined from a margin of 100
 * per cent on, which no price leaves.
 */
export const priceForMargin = (cost: Rational, margin: string): Rational | undefined => {
  const left = hundred.minus(exact(margin));
  return left.sign > 0 ? cost.times(hundred).over(left) : undefined;
};

/** The price without tax that food is so many per cent of, in minor units, exact; undefined at 0 per cent. */
export const priceForFoodCost = (food: Rational, percent: string): Rational | undefined => {
  const share = exact(percent);
  return share.sign > 0 ? food.times(hundred).over(share) : undefined;
};

/** What is left of a price without tax once the cost is paid, in per cent of it, exact; undefined without a price. */
export const marginOf = (cost: Rational, net: number): Rational | undefined => {
  const price = Rational.of(net);
  return net > 0 ? price.minus(cost).over(price).times(hundred) : undefined;
};

/** What part of a price without tax the food is, in per cent, exact; undefined without a price. */
export const foodCostOf = (food: Rational, net: number): Rational | undefined =>
  net > 0 ? food.over(Rational.of(net)).times(hundred) : undefined;

/** The most a sum holds, as facts are kept. */
const most = 1_000_000_000_000;

/**
 * The least multiple of `step` at which a price reaches what is asked, sought from the exact price without roundings:
 * one step less does not reach it. Undefined where none does that a sum could hold.
 */
export const leastPrice = (
  from: Rational,
  step: number,
  reaches: (price: number) => boolean,
): number | undefined => {
  let yes = Math.max(0, Number(from.over(Rational.of(step)).ceil()));
  // Roundings move it by few steps, but under a discount of nearly everything by very many: hence ever longer strides.
  for (let stride = 1; yes * step > most || !reaches(yes * step); stride *= 2) {
    yes += stride;
    if (yes * step > most) return undefined;
  }
  let no = yes - 1;
  for (let stride = 1; no >= 0 && reaches(no * step); stride *= 2) {
    yes = no;
    no = Math.max(-1, no - stride);
  }
  while (yes - no > 1) {
    const middle = no + Math.floor((yes - no) / 2);
    if (reaches(middle * step)) yes = middle;
    else no = middle;
  }
  return yes * step;
};
