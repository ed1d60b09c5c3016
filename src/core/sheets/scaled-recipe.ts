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
import { cautions, conventions, decimalMoney, type Sheet } from './sheet.js';

/** How much to make: so many portions, each of its own size or of a stated one; or so many batches. */
export type Asked = { portions: Rational; portion: Measure | null } | { batches: Rational };

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
  lines: ScaledLine[];
  steps: ScaledStep[];
  /** Components in full at the amounts this takes, each after all that use it. */
  components: RecipeCost[];
  cost: number;
  complete: boolean;
  aPortion: number | undefined;
  allergens: Cell[];
};

/** A recipe at base, or scaled to what is asked, every line and step beside its base figure. */
export const scaledRecipe = (
  recipe: Recipe,
  asked: Asked | undefined,
  facts: Facts,
): Answer<ScaledRecipe> => {
  const made = makes(recipe, facts);
  const wanted = asked && askedQuantity(asked, recipe, facts);
  const factor = wanted ? batchesFor(made, wanted) : Rational.one;
  const { value: needs, problems } = scale(recipe, factor, facts);
  if (!factor) problems.unshift(noYield(recipe, wanted?.base ?? 'portion'));
  const { value: costs, problems: found } = costOf(needs, facts);
  const whole = costs[0]!;
  const cost = toMinor(whole.cost);
  const parts = allocate(
    cost,
    whole.lines.map((line) => line.cost ?? Rational.zero),
  );
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
      allergens: allergensOf(recipe, facts),
    },
    problems: worstFirst([...problems, ...found, ...checkYield(recipe, facts)]),
  };
};

const askedQuantity = (asked: Asked, recipe: Recipe, facts: Facts): Quantity => {
  if ('batches' in asked) return { value: asked.batches, base: 'batch' };
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

const lineAllergens = ({ ingredient, component }: LineNeed, facts: Facts): ScaledLine['allergens'] => {
  const cells = component
    ? allergensOf(component, facts)
    : cellsOf([{ ingredient: ingredient!, through: [] }], facts);
  return cells.flatMap(({ item, state }) =>
    state === 'free' ? [] : [{ item: item.short.toLowerCase(), state }],
  );
};

/** The scaled recipe as tables. */
export const scaledRecipeSheet = ({ value, problems }: Answer<ScaledRecipe>): Sheet => {
  const { recipe, facts, factor, portions, lines, steps, complete, cost, made } = value;
  const { currency } = facts.kitchen;
  return {
    sheet: 'recipe',
    title: recipe.name,
    about: {
      recipe: recipe.key,
      portions: portions?.toString() ?? '',
      factor: factor?.toString() ?? '',
      makes: made?.value.toString() ?? '',
      makesUnit: made?.base ?? '',
      cup: cupOf(recipe, facts),
      cost: complete ? decimalMoney(cost, currency) : '',
      costKnown: decimalMoney(cost, currency),
      currency,
      complete: String(complete),
    },
    tables: [
      {
        name: 'lines',
        title: 'Ingredients',
        columns: [
          { key: 'amount', label: 'Amount' },
          { key: 'base', label: 'Base amount' },
          { key: 'unit', label: 'Unit' },
          { key: 'item', label: 'Ingredient or component' },
          { key: 'preparation', label: 'Preparation' },
          { key: 'prepared', label: 'Prepared weight', unit: 'g' },
          { key: 'bought', label: 'As purchased' },
          { key: 'boughtUnit', label: 'Unit as purchased' },
          { key: 'cost', label: 'Cost', unit: currency },
          { key: 'allergens', label: 'Allergens' },
        ],
        rows: lines.map(({ need, cost: part, allergens }) => ({
          amount: need.amount?.toString() ?? '',
          base: need.base?.toString() ?? '',
          unit: need.line.unit,
          item: (need.ingredient ?? need.component)!.name,
          preparation: need.line.preparation,
          prepared: need.prepared?.toString() ?? '',
          bought: need.bought?.value.toString() ?? '',
          boughtUnit: need.bought?.base ?? '',
          cost: part === undefined ? '' : decimalMoney(part, currency),
          allergens: allergens.map(({ item, state }) => `${item}: ${inFull[state]}`).join('; '),
        })),
      },
      {
        name: 'method',
        title: 'Method',
        columns: [
          { key: 'number', label: 'Step' },
          { key: 'minutes', label: 'Minutes' },
          { key: 'heat', label: 'Oven', unit: '°C' },
          { key: 'trays', label: 'Trays' },
          { key: 'words', label: 'Method' },
        ],
        rows: steps.map(({ step, number, trays }) => ({
          number: String(number),
          minutes: step.minutes === null ? '' : String(step.minutes),
          heat: step.oven ? String(step.oven.heat) : '',
          trays: trays === undefined ? '' : String(trays),
          words: step.words,
        })),
      },
    ],
    problems,
    foot: [
      conventions.weights,
      conventions.pieces,
      conventions.components,
      conventions.prices,
      conventions.minutes,
      cautions.allergens,
    ],
  };
};

const inFull = { contains: 'contains', may: 'may contain', unknown: 'not known' } as const;
