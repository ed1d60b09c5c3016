import { batchesFor, componentGrams, cupOf, type Makes, makes } from './batch.js';
import type { Facts } from './facts/facts.js';
import type { Ingredient } from './facts/ingredient.js';
import type { Cup } from './facts/kitchen.js';
import type { Line, Recipe } from './facts/recipe.js';
import { ingredientOf, recipeOf } from './lookup.js';
import type { Answer, Problem } from './problem.js';
import { missingFact, noAmount, noLines, noYield } from './problems.js';
import { exact } from './quantity/amount.js';
import { Rational } from './quantity/rational.js';
import { type Quantity, quantity } from './quantity/units.js';
import { isMissing, statesBought, weigh } from './weighing.js';

/** One line at the amount that is cooked; undefined where a fact is missing. */
export type LineNeed = {
  line: Line;
  base: Rational | undefined;
  amount: Rational | undefined;
  ingredient: Ingredient | undefined;
  component: Recipe | undefined;
  prepared: Rational | undefined;
  bought: Quantity | undefined;
  /** Batches of the component that this line takes. */
  batches: Rational | undefined;
};

/** One recipe, however often it comes up inside a dish, at the sum of its uses. */
export type RecipeNeed = {
  recipe: Recipe;
  cup: Cup;
  /** Batches; undefined when a use of it can't be worked out. */
  factor: Rational | undefined;
  makes: Makes;
  lines: LineNeed[];
};

/** Recipes and every component below them, each before what it uses; a loop is our own mistake and throws. */
export const closure = (roots: readonly Recipe[], facts: Facts): Recipe[] => {
  const order: Recipe[] = [];
  const open = new Set<string>();
  const done = new Set<string>();
  const visit = (recipe: Recipe) => {
    if (done.has(recipe.key)) return;
    if (open.has(recipe.key)) throw new Error(`recipe ${recipe.key} contains itself`);
    open.add(recipe.key);
    for (const { item } of recipe.lines) if ('component' in item) visit(recipeOf(item.component, facts));
    open.delete(recipe.key);
    done.add(recipe.key);
    order.push(recipe);
  };
  for (const root of roots) visit(root);
  return order.reverse();
};

/**
 * A recipe at `factor` batches with all below it: every line's amount, prepared grams and as purchased, exact.
 * Uses of a component are summed first, so a whole-pieces line rounds up once for the whole of what is asked.
 */
export const scale = (root: Recipe, factor: Rational | undefined, facts: Facts): Answer<RecipeNeed[]> => {
  const problems: Problem[] = [];
  const factors = new Map<string, Rational | undefined>([[root.key, factor]]);
  const needs: RecipeNeed[] = [];
  for (const recipe of closure([root], facts)) {
    const cup = cupOf(recipe, facts);
    const batches = factors.get(recipe.key);
    if (recipe.lines.length === 0) problems.push(noLines(recipe));
    const lines = recipe.lines.map((line) => lineNeed(line, recipe, batches, cup, facts, problems));
    needs.push({ recipe, cup, factor: batches, makes: makes(recipe, facts), lines });
    for (const need of lines) if (need.component) addUse(need, need.component, factors, problems);
  }
  return { value: needs, problems };
};

const addUse = (
  need: LineNeed,
  component: Recipe,
  factors: Map<string, Rational | undefined>,
  problems: Problem[],
) => {
  const before = factors.has(component.key) ? factors.get(component.key) : Rational.zero;
  if (need.line.amount === null) return factors.set(component.key, before);
  if (need.amount && !need.batches) problems.push(noYield(component, need.line.unit));
  factors.set(component.key, need.batches && before?.plus(need.batches));
};

const lineNeed = (
  line: Line,
  recipe: Recipe,
  factor: Rational | undefined,
  cup: Cup,
  facts: Facts,
  problems: Problem[],
): LineNeed => {
  const ingredient = 'ingredient' in line.item ? ingredientOf(line.item.ingredient, facts) : undefined;
  const component = 'component' in line.item ? recipeOf(line.item.component, facts) : undefined;
  const base = line.amount === null ? undefined : exact(line.amount);
  if (!base) problems.push(noAmount(recipe, line.key, (ingredient ?? component)!.name));
  const straight = base && factor?.times(base);
  const amount = straight && line.scales === 'pieces' ? wholePieces(straight, line.unit) : straight;
  const need: LineNeed = {
    line,
    base,
    amount,
    ingredient,
    component,
    prepared: undefined,
    bought: undefined,
    batches: undefined,
  };
  if (!amount) return need;
  const asked = quantity(amount, line.unit, cup);
  if (component) {
    need.batches = batchesFor(makes(component, facts), asked);
    need.prepared = componentGrams(component, asked, facts);
    return need;
  }
  const weighed = weigh(ingredient!, asked, statesBought(line, asked.base));
  const { prepared, bought } = weighed;
  const toBuy = isMissing(bought) && !ingredient!.notBought;
  // Where the bought amount is known or none is bought, a missing weight only leaves the weight of the dish open.
  if (isMissing(prepared))
    problems.push({ ...missingFact(ingredient!, prepared, 'prepared'), weight: toBuy ? 'ask' : 'check' });
  else need.prepared = prepared;
  if (!isMissing(bought)) need.bought = bought;
  else if (toBuy) problems.push(missingFact(ingredient!, bought));
  return need;
};

/** Rounded up to whole pieces; of a dozen each single one counts. */
const wholePieces = (amount: Rational, unit: string): Rational => {
  if (unit !== 'dozen') return Rational.of(amount.ceil());
  const dozen = Rational.of(12);
  return Rational.of(amount.times(dozen).ceil()).over(dozen);
};
