import { allergensOf, type Cell, cellsOf } from '../allergens.js';
import { batchesFor, checkYield, cupOf, makes } from '../batch.js';
import { costOf, type RecipeCost } from '../costing.js';
import type { Measure } from '../facts/common.js';
import type { Facts } from '../facts/facts.js';
import type { Recipe } from '../facts/recipe.js';
import { allocate, toMinor } from '../money.js';
import { traysFor } from '../prep.js';
import type { Answer } from '../problem.js';
import { noYield } from '../problems.js';
import { exact } from '../quantity/amount.js';
import { Rational } from '../quantity/rational.js';
import { type Quantity, quantity } from '../quantity/units.js';
import { worstFirst } from '../requirements.js';
import { type LineNeed, scale } from '../scaling.js';
import { type AllergenMatrix, labelDates, unreadIn } from './allergen-matrix.js';

/** How much to make: portions, each of the recipe's own size or of a stated one; or batches, undefined when not known. */
export type Asked = { portions: Rational; portion: Measure | null } | { batches: Rational | undefined };

export type ScaledLine = {
  need: LineNeed;
  /** Whole minor units; the lines add up to the total. */
  cost: number | undefined;
  allergens: { item: string; state: 'contains' | 'may' | 'unknown' }[];
};

export type ScaledStep = { step: Recipe['steps'][number]; number: number; trays: number | undefined };

export type ScaledRecipe = {
  recipe: Recipe;
  facts: Facts;
  asked: Asked | undefined;
  factor: Rational | undefined;
  /** What one batch and what the scaled amount makes, in the recipe's own measure: weight, else volume, else portions. */
  base: Quantity | undefined;
  made: Quantity | undefined;
  portions: Rational | undefined;
  /** What one of those portions weighs or measures, where known. */
  portion: Quantity | undefined;
  lines: ScaledLine[];
  steps: ScaledStep[];
  /** Components in full at the amounts this takes, each after all that use it. */
  components: RecipeCost[];
  cost: number;
  complete: boolean;
  aPortion: number | undefined;
  allergens: Cell[];
  /** The first and last day on which a label of what is in it was read. */
  labels: AllergenMatrix['labels'];
};

/** A recipe at base, or scaled to what is asked, every line and step beside its base figure. */
export const scaledRecipe = (
  recipe: Recipe,
  asked: Asked | undefined,
  facts: Facts,
): Answer<ScaledRecipe> => {
  const made = makes(recipe, facts);
  const wanted = asked && askedQuantity(asked, recipe, facts);
  const factor = asked ? wanted && batchesFor(made, wanted) : Rational.one;
  const { value: needs, problems } = scale(recipe, factor, facts);
  if (!factor) problems.unshift(noYield(recipe, wanted?.base ?? 'portion'));
  const { value: costs, problems: found } = costOf(needs, facts);
  const whole = costs[0]!;
  const cost = toMinor(whole.cost);
  const parts = allocate(
    cost,
    whole.lines.map((line) => line.cost ?? Rational.zero),
  );
  const allergens = allergensOf(recipe, facts);
  const portions = asked && 'portions' in asked ? asked.portions : factor && made.portions?.times(factor);
  const one = measured(made);
  return {
    value: {
      recipe,
      facts,
      asked,
      factor,
      base: one,
      made: one && factor && { value: one.value.times(factor), base: one.base },
      portions,
      portion: portionOf(one, factor, portions),
      lines: whole.lines.map((line, i) => ({
        need: line.need,
        cost: line.cost && parts[i],
        allergens: lineAllergens(line.need, facts),
      })),
      steps: recipe.steps.map((step, i) => ({
        step,
        number: i + 1,
        trays: factor && made.portions && traysFor(step, made.portions.times(factor)),
      })),
      components: costs.slice(1),
      cost,
      complete: whole.complete,
      aPortion: portions && !portions.isZero ? toMinor(whole.cost.over(portions)) : undefined,
      allergens,
      labels: labelDates([{ recipe }], facts),
    },
    problems: worstFirst([
      ...problems,
      ...found,
      ...checkYield(recipe, facts),
      ...unreadIn([{ recipe, cells: allergens }]),
    ]),
  };
};

const askedQuantity = (asked: Asked, recipe: Recipe, facts: Facts): Quantity | undefined => {
  if ('batches' in asked) return asked.batches && { value: asked.batches, base: 'batch' };
  const { portions, portion } = asked;
  if (!portion) return { value: portions, base: 'portion' };
  const each = quantity(exact(portion.amount), portion.unit, cupOf(recipe, facts));
  return { value: each.value.times(portions), base: each.base };
};

const measured = (made: ReturnType<typeof makes>): Quantity | undefined => {
  if (made.g) return { value: made.g, base: 'g' };
  if (made.ml) return { value: made.ml, base: 'ml' };
  return made.portions && { value: made.portions, base: 'portion' };
};

const portionOf = (
  one: Quantity | undefined,
  factor: Rational | undefined,
  portions: Rational | undefined,
): Quantity | undefined => {
  if (!one || !factor || !portions || portions.isZero || one.base === 'portion') return undefined;
  return { value: one.value.times(factor).over(portions), base: one.base };
};

const lineAllergens = ({ ingredient, component }: LineNeed, facts: Facts): ScaledLine['allergens'] => {
  const cells = component
    ? allergensOf(component, facts)
    : cellsOf([{ ingredient: ingredient!, through: [] }], facts);
  return cells.flatMap(({ item, state }) =>
    state === 'free' ? [] : [{ item: item.short.toLowerCase(), state }],
  );
};
