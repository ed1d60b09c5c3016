import type { Ingredient } from './facts/ingredient.js';
import type { Line, Recipe } from './facts/recipe.js';
import type { FlourGap } from './flour.js';
import type { Gap } from './line-weight.js';
import type { Problem } from './problem.js';
import { listed, missingFact, ofIngredient, ofRecipe } from './problems.js';
import type { Rational } from './quantity/rational.js';
import type { Wary } from './wary.js';

/** The problem sentences of single lines, as those of `problems.ts`. */

/** A fact that a line waits for; `wanted` says whether that leaves open what to buy or what it weighs prepared. */
export const lineGap = (
  recipe: Recipe,
  line: Line,
  ingredient: Ingredient,
  gap: Gap,
  wanted: 'bought' | 'prepared' = 'bought',
): Problem =>
  gap.missing === 'cooked'
    ? noCookedYield(recipe, line, ingredient, gap.unit)
    : missingFact(ingredient, gap, wanted);

/** Other ways it is cooked are chosen from at the line; where there are none, one is added to the ingredient. */
const noCookedYield = (recipe: Recipe, line: Line, ingredient: Ingredient, unit: string): Problem => {
  const { name, cookedYields } = ingredient;
  const others = cookedYields.length > 0 ? ` It has ${listed(cookedYields.map((one) => one.name))}.` : '';
  const open = `${name}: what it weighs once ${line.cooked || 'cooked'} is not known, so what to buy can't be worked out.`;
  return {
    weight: 'ask',
    code: 'no-cooked-yield',
    sentence:
      unit === 'g' ? `${open}${others}` : `${name}: once cooked it is known by weight, not by ${unit}.`,
    subject:
      others || unit !== 'g'
        ? ofRecipe(recipe, `lines/${line.key}/cooked`)
        : ofIngredient(ingredient, 'cookedYields'),
  };
};

export const noFlour = (recipe: Recipe, line: Line, item: string, { gap }: FlourGap): Problem => {
  const words = {
    'no-flour': `${item} in ${recipe.name}: no flour in this recipe to take a per cent of. Let the line of the flour scale as flour.`,
    'not-weighed': `${item} in ${recipe.name}: what the flour weighs is not known, so no per cent of it can be taken.`,
    'no-dough': `${recipe.name}: its flour is in per cent, so the amounts can't be worked out until it says what one batch weighs.`,
    others: `${recipe.name}: what its other lines weigh is not known, so its flour in per cent can't be worked out.`,
    'nothing-left': `${recipe.name}: its other lines weigh as much as it is said to make, so nothing is left for the flour.`,
  };
  const atYield = gap === 'no-dough' || gap === 'nothing-left';
  return {
    weight: 'ask',
    code: 'no-flour',
    sentence: words[gap],
    subject: ofRecipe(recipe, atYield ? 'yield' : `lines/${line.key}/amount`),
  };
};

const hopes: Record<Wary, string> = {
  salt: 'Salt seldom scales straight: hold some back and taste.',
  leavening: 'Leavening seldom scales straight: try it once, or make several batches.',
  setting: 'A set is hard to foretell: test a spoonful in the cold first.',
};

export const scaledFar = (recipe: Recipe, line: Line, item: string, wary: Wary, by: Rational): Problem => ({
  weight: 'check',
  code: 'scaled-far',
  sentence: `${item} in ${recipe.name} is scaled ${times(by)}. ${hopes[wary]}`,
  subject: ofRecipe(recipe, `lines/${line.key}/amount`),
});

export const minutesFar = (recipe: Recipe, by: Rational): Problem => ({
  weight: 'check',
  code: 'minutes-far',
  sentence: `${recipe.name} is scaled ${times(by)}. Its cooking minutes are those of one batch: go by the food, not the clock.`,
  subject: ofRecipe(recipe, 'steps'),
});

const flags = ['scaled-far', 'minutes-far'];

/** Whether a problem flags what may not scale straight; that touches no amount and no cost. */
export const isFlag = ({ code }: Problem): boolean => flags.includes(code);

/** What is decided with the pot before one: it is said, and nothing is settled about it beforehand. */
export const atThePot = (problem: Problem): boolean => problem.code === 'to-taste' || isFlag(problem);

const times = (by: Rational): string => {
  const figure = by.toFixed(2);
  return figure === '0.00' ? 'to less than a hundredth' : `× ${figure}`;
};
