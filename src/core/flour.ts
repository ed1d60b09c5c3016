import type { Line, Recipe } from './facts/recipe.js';
import { exact } from './quantity/amount.js';
import { Rational } from './quantity/rational.js';
import { quantity } from './quantity/units.js';

/** The unit of a line that is a share of the recipe's flour (baker's per cent). */
export const share = 'percent';

/** Why a per cent of the flour can't be taken. */
export type FlourGap = { gap: 'no-flour' | 'not-weighed' | 'no-dough' | 'others' | 'nothing-left' };

export const isGap = (value: object): value is FlourGap => 'gap' in value;

const hundred = Rational.of(100);

/** What of a line is needed: of a range the upper end, so that nobody is short. */
export const upperEnd = ({ amount, amountTo }: Line): Rational | undefined => {
  const most = amountTo ?? amount;
  return most === null ? undefined : exact(most);
};

/**
 * Grams of flour in one batch, which lines in per cent are shares of, exact: what the flour lines weigh. Where these
 * are in per cent too, what one batch is said to make, before the loss in cooking, less the lines that have an amount
 * of their own, over the sum of all per cents. `grams` says what such a line weighs.
 */
export const flourOf = (recipe: Recipe, grams: (line: Line) => Rational | undefined): Rational | FlourGap => {
  const flour = recipe.lines.filter(({ scales, amount }) => scales === 'flour' && amount !== null);
  if (flour.length === 0) return { gap: 'no-flour' };
  if (flour.some(({ unit }) => unit === share)) return fromDough(recipe, grams);
  return added(flour, grams) ?? { gap: 'not-weighed' };
};

const fromDough = (recipe: Recipe, grams: (line: Line) => Rational | undefined): Rational | FlourGap => {
  const dough = doughOf(recipe);
  if (!dough) return { gap: 'no-dough' };
  const measured = recipe.lines.filter(({ amount }) => amount !== null);
  const others = added(
    measured.filter(({ unit }) => unit !== share),
    grams,
  );
  if (!others) return { gap: 'others' };
  const shares = measured.filter(({ unit }) => unit === share);
  const percent = shares.reduce((sum, line) => sum.plus(upperEnd(line)!), Rational.zero);
  const left = dough.minus(others);
  if (left.sign <= 0 || percent.isZero) return { gap: 'nothing-left' };
  return left.times(hundred).over(percent);
};

/** What the lines of one batch weigh by its stated weight: that, before the loss in cooking. */
const doughOf = ({ yield: { weight }, cookingLoss }: Recipe): Rational | undefined => {
  const keeps = hundred.minus(exact(cookingLoss ?? '0')).over(hundred);
  if (!weight || keeps.sign <= 0) return undefined;
  const made = quantity(exact(weight.amount), weight.unit, 'metric');
  return made.base === 'g' ? made.value.over(keeps) : undefined;
};

const added = (lines: readonly Line[], grams: (line: Line) => Rational | undefined): Rational | undefined => {
  let sum = Rational.zero;
  for (const line of lines) {
    const one = grams(line);
    if (!one) return undefined;
    sum = sum.plus(one);
  }
  return sum;
};

/** So many per cent of the flour, in grams. */
export const shareOf = (flour: Rational, percent: Rational): Rational => flour.times(percent).over(hundred);
