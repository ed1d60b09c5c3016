import { allergensOf, type Cell } from '../allergens.js';
import { checkYield, makes } from '../batch.js';
import { costOf, type RecipeCost } from '../costing.js';
import { type Equipment, equipmentFor, type StepEquipment } from '../equipment.js';
import type { Facts } from '../facts/facts.js';
import type { Place } from '../facts/place.js';
import type { Recipe } from '../facts/recipe.js';
import { allocate, toMinor } from '../money.js';
import type { Answer } from '../problem.js';
import { Rational } from '../quantity/rational.js';
import { baseOf, type Quantity } from '../quantity/units.js';
import { worstFirst } from '../requirements.js';
import { type RoastGuide, roastGuides } from '../roast.js';
import { type Asked, scaleTo } from '../scale-to.js';
import { scale } from '../scaling.js';
import { type AllergenMatrix, labelDates, unreadIn } from './allergen-matrix.js';
import { type ScaledLine, scaledLine } from './scaled-line.js';

export type { Asked } from '../scale-to.js';
export type { ScaledLine } from './scaled-line.js';

export type ScaledStep = StepEquipment;

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
  equipment: Equipment;
  /** How long a roast of another weight may take, where that can be said. */
  roasts: RoastGuide[];
  /** Made beyond what was asked, where only whole batches are made, or below zero not made; in the recipe's own measure. */
  left: Quantity | undefined;
  /** Components in full at the amounts this takes, each after all that use it. */
  components: RecipeCost[];
  cost: number;
  complete: boolean;
  aPortion: number | undefined;
  allergens: Cell[];
  /** The first and last day on which a label of what is in it was read. */
  labels: AllergenMatrix['labels'];
};

/** A recipe at base, or scaled to what is asked, every line and step beside its base figure; for the kitchen of a venue. */
export const scaledRecipe = (
  recipe: Recipe,
  asked: Asked | undefined,
  facts: Facts,
  venue?: Place,
): Answer<ScaledRecipe> => {
  const made = makes(recipe, facts);
  const to = scaleTo(recipe, asked ?? { batches: Rational.one }, facts);
  const { factor, portions, left } = to.value;
  const { value: needs, problems } = scale(recipe, factor, facts);
  const equipment = equipmentFor(recipe, factor, asked, facts, venue);
  problems.unshift(...to.problems, ...equipment.problems);
  const { value: costs, problems: found } = costOf(needs, facts);
  const whole = costs[0]!;
  const cost = toMinor(whole.cost);
  const parts = allocate(
    cost,
    whole.lines.map((line) => line.cost ?? Rational.zero),
  );
  const allergens = allergensOf(recipe, facts);
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
      lines: whole.lines.map((line, i) => scaledLine(line, parts[i]!, factor, facts)),
      steps: equipment.value.steps,
      equipment: equipment.value,
      roasts: factor && asked && isByWeight(asked) ? roastGuides(needs[0]!, factor) : [],
      left: one && !left.isZero ? { value: one.value.times(left), base: one.base } : undefined,
      components: costs.slice(1),
      cost,
      complete: whole.complete,
      aPortion: portions && !portions.isZero ? toMinor(whole.cost.over(portions)) : undefined,
      allergens,
      labels: labelDates([recipe], facts),
    },
    problems: worstFirst([...problems, ...found, ...checkYield(recipe, facts), ...unreadIn([recipe], facts)]),
  };
};

/** Asked for as one weight, so that a roast may be one bigger piece; whole batches are more pieces. */
const isByWeight = (asked: Asked): boolean => {
  const measure = 'total' in asked ? asked.total : 'have' in asked ? asked.have : undefined;
  return measure !== undefined && baseOf(measure.unit) === 'g' && !asked.wholeBatches;
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
