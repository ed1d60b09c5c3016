import { batchesFor, cupOf, makes } from './batch.js';
import type { Measure } from './facts/common.js';
import type { Facts } from './facts/facts.js';
import type { Recipe, Tin } from './facts/recipe.js';
import { noBatch, noTin } from './how-much-problems.js';
import { batchesFrom, type Have } from './limit.js';
import type { Answer, Problem } from './problem.js';
import { noYield } from './problems.js';
import { exact } from './quantity/amount.js';
import { Rational } from './quantity/rational.js';
import { type Quantity, quantity } from './quantity/units.js';
import { batchesForTin } from './tins.js';

/** The ways to say how much to make; batches undefined where they are not known. */
export type Way =
  | { portions: Rational }
  | { total: Measure }
  | Have
  | { tin: Tin }
  | { batches: Rational | undefined };

/** How much to make, in portions of the recipe's own size or of a stated one, in which tins, and whether in whole batches. */
export type Asked = Way & { portion?: Measure | null; into?: Tin | null; wholeBatches?: boolean };

export type ScaledTo = {
  /** Batches to make; undefined where that can't be worked out. */
  factor: Rational | undefined;
  portions: Rational | undefined;
  /** Where only whole batches are made, those beyond what was asked; below zero, what could not be made whole. */
  left: Rational;
};

/**
 * How many batches and portions what is asked comes to, exact. Whole batches are rounded up from what is needed, and down
 * from what is at hand.
 */
export const scaleTo = (recipe: Recipe, asked: Asked, facts: Facts): Answer<ScaledTo> => {
  const wanted = batchesOf(recipe, asked, facts);
  if (!(wanted instanceof Rational))
    return {
      value: { factor: undefined, portions: counted(asked), left: Rational.zero },
      problems: wanted,
    };
  const factor = asked.wholeBatches ? whole(wanted, asked) : wanted;
  if (factor.isZero && !wanted.isZero)
    return {
      value: { factor: undefined, portions: undefined, left: Rational.zero },
      problems: [noBatch(recipe)],
    };
  const portions =
    (asked.wholeBatches ? undefined : counted(asked)) ?? portionsIn(recipe, factor, asked, facts);
  return { value: { factor, portions, left: factor.minus(wanted) }, problems: [] };
};

const whole = (wanted: Rational, asked: Asked): Rational =>
  Rational.of('have' in asked ? wanted.floor() : wanted.ceil());

const counted = (asked: Asked): Rational | undefined => ('portions' in asked ? asked.portions : undefined);

const batchesOf = (recipe: Recipe, asked: Asked, facts: Facts): Rational | Problem[] => {
  if ('have' in asked) {
    const found = batchesFrom(recipe, asked, facts);
    return found instanceof Rational ? found : [found];
  }
  if ('tin' in asked) return recipe.tin ? batchesForTin(recipe.tin, asked.tin) : [noTin(recipe)];
  const wanted = askedQuantity(recipe, asked, facts);
  return (wanted && batchesFor(makes(recipe, facts), wanted)) ?? [noYield(recipe, wanted?.base ?? 'portion')];
};

const askedQuantity = (
  recipe: Recipe,
  asked: Exclude<Asked, Have | { tin: Tin }>,
  facts: Facts,
): Quantity | undefined => {
  if ('batches' in asked) return asked.batches && { value: asked.batches, base: 'batch' };
  if ('total' in asked) return measured(recipe, asked.total, facts);
  if (!asked.portion) return { value: asked.portions, base: 'portion' };
  const each = measured(recipe, asked.portion, facts);
  return { value: each.value.times(asked.portions), base: each.base };
};

const measured = (recipe: Recipe, { amount, unit }: Measure, facts: Facts): Quantity =>
  quantity(exact(amount), unit, cupOf(recipe, facts));

/** Portions in so many batches: of the stated size where one is stated, else of the recipe's own. */
const portionsIn = (
  recipe: Recipe,
  factor: Rational,
  { portion }: Asked,
  facts: Facts,
): Rational | undefined => {
  const made = makes(recipe, facts);
  if (!portion) return made.portions?.times(factor);
  const each = batchesFor(made, measured(recipe, portion, facts));
  return each && !each.isZero ? factor.over(each) : undefined;
};
