import type { Facts } from './facts/facts.js';
import type { Ingredient } from './facts/ingredient.js';
import type { Cup } from './facts/kitchen.js';
import type { Line, Recipe } from './facts/recipe.js';
import { type FlourGap, flourOf, isGap, share, shareOf, upperEnd } from './flour.js';
import { weighLine } from './line-weight.js';
import { ingredientOf, once, recipeOf } from './lookup.js';
import type { Problem } from './problem.js';
import { oddYield } from './problems.js';
import { exact } from './quantity/amount.js';
import { Rational } from './quantity/rational.js';
import { type Base, type Quantity, quantity } from './quantity/units.js';
import { isMissing } from './weighing.js';

/** What one batch makes: portions, grams, millilitres; exact, each absent when not known. */
export type Makes = { portions?: Rational; g?: Rational; ml?: Rational };

export const cupOf = (recipe: Recipe, facts: Facts): Cup => recipe.cup ?? facts.kitchen.cup;

/**
 * What one batch of a recipe makes: as stated, and where no weight is stated but the loss in cooking is, the weight
 * of its lines less that loss. Exact.
 */
export const makes = once((recipe: Recipe, facts: Facts): Makes => {
  const { portions, weight, volume } = recipe.yield;
  const made: Makes = {};
  if (portions !== null) made.portions = exact(portions);
  for (const measure of [weight, volume]) {
    const q = measure && quantity(exact(measure.amount), measure.unit, cupOf(recipe, facts));
    if (q?.base === 'g') made.g = q.value;
    if (q?.base === 'ml') made.ml = q.value;
  }
  if (!made.g && recipe.cookingLoss !== null) made.g = afterLoss(recipe, facts);
  return made;
});

const hundred = Rational.of(100);

const afterLoss = (recipe: Recipe, facts: Facts): Rational | undefined => {
  const keeps = hundred.minus(exact(recipe.cookingLoss ?? '0')).over(hundred);
  return keeps.sign > 0 ? linesWeight(recipe, facts)?.times(keeps) : undefined;
};

/**
 * Prepared grams of all lines of one batch; lines to taste count nothing. Undefined when any weight is missing, and
 * where no line has an amount.
 */
export const linesWeight = once((recipe: Recipe, facts: Facts): Rational | undefined => {
  let total = Rational.zero;
  for (const line of recipe.lines) {
    if (line.amount === null) continue;
    const grams = lineGrams(line, recipe, facts);
    if (!grams) return undefined;
    total = total.plus(grams);
  }
  return total.isZero ? undefined : total;
});

/** A line at one batch: what is needed, the lower end where it is a range, and the unit of both. */
export type Stated = { amount: Rational; least: Rational | undefined; unit: string };

/** What a line states of one batch, exact; in per cent of the flour, as the grams that come to. */
export const statedBy = (line: Line, recipe: Recipe, facts: Facts): Stated | FlourGap | undefined => {
  const amount = upperEnd(line);
  if (!amount) return undefined;
  const least = line.amountTo === null ? undefined : exact(line.amount ?? line.amountTo);
  if (line.unit !== share) return { amount, least, unit: line.unit };
  const flour = flourIn(recipe, facts);
  if (isGap(flour)) return flour;
  return { amount: shareOf(flour, amount), least: least && shareOf(flour, least), unit: 'g' };
};

const flourIn = once((recipe: Recipe, facts: Facts) =>
  flourOf(recipe, (line) => lineGrams(line, recipe, facts)),
);

const lineGrams = (line: Line, recipe: Recipe, facts: Facts): Rational | undefined => {
  const stated = statedBy(line, recipe, facts);
  if (!stated || isGap(stated)) return undefined;
  const asked = quantity(stated.amount, stated.unit, cupOf(recipe, facts));
  if ('component' in line.item) return componentGrams(recipeOf(line.item.component, facts), asked, facts);
  const { prepared } = weighLine(line, ingredientOf(line.item.ingredient, facts), asked);
  return isMissing(prepared) ? undefined : prepared;
};

/**
 * The ingredients and components whose weight is missing where nobody can say what a recipe weighs; the recipe itself
 * where no line has an amount, or no flour to take a per cent of.
 */
export const unweighed = (recipe: Recipe, facts: Facts): { ingredients: Ingredient[]; recipes: Recipe[] } => {
  if (makes(recipe, facts).g) return { ingredients: [], recipes: [] };
  const measured = recipe.lines.filter(({ amount }) => amount !== null);
  if (measured.length === 0) return { ingredients: [], recipes: [recipe] };
  const flour = measured.some(({ unit }) => unit === share) ? flourIn(recipe, facts) : Rational.zero;
  const known = (line: Line) => (line.unit === share && isGap(flour)) || lineGrams(line, recipe, facts);
  const open = measured.filter((line) => !known(line)).map(({ item }) => item);
  return {
    ingredients: open.flatMap((item) => ('ingredient' in item ? [ingredientOf(item.ingredient, facts)] : [])),
    recipes: [
      ...(isGap(flour) && flour.gap !== 'not-weighed' ? [recipe] : []),
      ...open.flatMap((item) => ('component' in item ? [recipeOf(item.component, facts)] : [])),
    ],
  };
};

/**
 * Batches of a component in an asked amount, by weight, volume or portions as it is known to make; exact. "Each" is a
 * portion; of another count (a loaf, a tin) nobody has said how many portions it is, so the answer is undefined.
 */
export const batchesFor = (made: Makes, asked: Quantity): Rational | undefined => {
  if (asked.base === 'batch') return asked.value;
  const whole = wholeBatch(made, asked.base);
  return whole && !whole.isZero ? asked.value.over(whole) : undefined;
};

const wholeBatch = (made: Makes, base: Base): Rational | undefined => {
  if (base === 'g') return made.g;
  if (base === 'ml') return made.ml;
  return base === 'portion' || base === 'each' ? made.portions : undefined;
};

/** Grams of an asked amount of a component, exact; undefined when its weight isn't known. */
export const componentGrams = (component: Recipe, asked: Quantity, facts: Facts): Rational | undefined => {
  if (asked.base === 'g') return asked.value;
  const made = makes(component, facts);
  const batches = batchesFor(made, asked);
  return made.g && batches?.times(made.g);
};

const three = Rational.of(3);

/** Asks whether a decimal slipped where the lines come to three times the stated weight, or to a third of it. */
export const checkYield = (recipe: Recipe, facts: Facts): Problem[] => {
  if (!recipe.yield.weight) return [];
  const stated = makes(recipe, facts).g;
  const lines = afterLoss(recipe, facts);
  if (!stated || !lines || stated.isZero || lines.isZero) return [];
  if (lines.compare(stated.times(three)) < 0 && stated.compare(lines.times(three)) < 0) return [];
  return [oddYield(recipe, `${lines.toFixed(0)} g`, `${stated.toFixed(0)} g`)];
};
