import { batchesFor, componentGrams, cupOf, makes, statedBy } from './batch.js';
import type { Facts } from './facts/facts.js';
import type { Ingredient } from './facts/ingredient.js';
import type { Line, Recipe } from './facts/recipe.js';
import { isGap } from './flour.js';
import { grown } from './growth.js';
import { lineGap, noFlour, scaledFar } from './line-problems.js';
import { type Gap, weighLine } from './line-weight.js';
import { ingredientOf, recipeOf } from './lookup.js';
import type { Problem } from './problem.js';
import { noAmount } from './problems.js';
import type { Rational } from './quantity/rational.js';
import { type Quantity, quantity } from './quantity/units.js';
import { isFar, type Wary, waryOf } from './wary.js';
import { isMissing } from './weighing.js';

/** One line at the amount that is cooked; undefined where a fact is missing. */
export type LineNeed = {
  line: Line;
  /** What base and amount stand in: the line's unit, or grams where that is per cent of the flour. */
  unit: string;
  base: Rational | undefined;
  /** What is needed: of a range the upper end. */
  amount: Rational | undefined;
  /** The lower ends of a range, at base and as scaled; undefined for one figure. */
  baseLeast: Rational | undefined;
  least: Rational | undefined;
  ingredient: Ingredient | undefined;
  component: Recipe | undefined;
  /** Grams that it puts into the dish. */
  prepared: Rational | undefined;
  bought: Quantity | undefined;
  /** Batches of the component that this line takes. */
  batches: Rational | undefined;
  /** Scaled so far that it seldom does what it did: what to be wary of. */
  wary: Wary | undefined;
  /** What leaves a figure of it open, or is to be looked at. */
  problems: readonly Problem[];
  /** The facts of the ingredient that it waits for. */
  missing: readonly Gap[];
};

/** A line of a recipe at `factor` batches, exact, with what is missing of it and what is to be looked at. */
export const lineNeed = (
  line: Line,
  recipe: Recipe,
  factor: Rational | undefined,
  facts: Facts,
): LineNeed => {
  const ingredient = 'ingredient' in line.item ? ingredientOf(line.item.ingredient, facts) : undefined;
  const component = 'component' in line.item ? recipeOf(line.item.component, facts) : undefined;
  const need: LineNeed = {
    line,
    unit: line.unit,
    base: undefined,
    amount: undefined,
    baseLeast: undefined,
    least: undefined,
    ingredient,
    component,
    prepared: undefined,
    bought: undefined,
    batches: undefined,
    wary: undefined,
    problems: none,
    missing: none,
  };
  const { name } = (ingredient ?? component)!;
  const stated = statedBy(line, recipe, facts);
  if (!stated) return withProblem(need, noAmount(recipe, line.key, name));
  if (isGap(stated)) {
    const gap = noFlour(recipe, line, name, stated);
    return withProblem(need, ingredient?.notBought ? { ...gap, weight: 'check' } : gap);
  }
  const { amount, least, unit } = stated;
  need.unit = unit;
  need.base = amount;
  need.baseLeast = least;
  if (!factor) return need;
  need.amount = grown(amount, unit, line.scales, factor);
  need.least = least && grown(least, unit, line.scales, factor);
  const asked = quantity(need.amount, unit, cupOf(recipe, facts));
  if (component) {
    need.batches = batchesFor(makes(component, facts), asked);
    need.prepared = componentGrams(component, asked, facts);
    return need;
  }
  weighed(need, recipe, ingredient!, asked);
  // What goes in once for each batch is as its author tried it.
  if (!isFar(factor) || line.scales === 'batch') return need;
  need.wary = waryOf(ingredient!);
  return need.wary ? withProblem(need, scaledFar(recipe, line, name, need.wary, factor)) : need;
};

const none: readonly never[] = [];

const withProblem = (need: LineNeed, problem: Problem): LineNeed => {
  need.problems = need.problems === none ? [problem] : [...need.problems, problem];
  return need;
};

/** Sets what a line weighs and what is bought for it, with what is missing to say so. */
const weighed = (need: LineNeed, recipe: Recipe, ingredient: Ingredient, asked: Quantity): void => {
  const { line } = need;
  const { prepared, bought } = weighLine(line, ingredient, asked);
  const toBuy = isMissing(bought) && !ingredient.notBought;
  // Where the bought amount is known or none is bought, a missing weight only leaves the weight of the dish open.
  if (isMissing(prepared)) {
    const gap = lineGap(recipe, line, ingredient, prepared, 'prepared');
    withProblem(need, { ...gap, weight: toBuy ? 'ask' : 'check' });
    need.missing = [prepared];
  } else need.prepared = prepared;
  if (!isMissing(bought)) need.bought = bought;
  else if (toBuy) {
    withProblem(need, lineGap(recipe, line, ingredient, bought));
    need.missing = [...need.missing, bought];
  }
};
