import { cupOf, type Makes, makes } from './batch.js';
import type { Facts } from './facts/facts.js';
import type { Cup } from './facts/kitchen.js';
import type { Recipe } from './facts/recipe.js';
import { type LineNeed, lineNeed } from './line-need.js';
import { minutesFar } from './line-problems.js';
import { once, recipeOf } from './lookup.js';
import type { Answer, Problem } from './problem.js';
import { noLines, noYield } from './problems.js';
import { Rational } from './quantity/rational.js';
import { cooksByTheClock, isFar } from './wary.js';

export { type LineNeed, lineNeed } from './line-need.js';

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

/** A recipe and every component below it, each before what it uses. */
export const closureOf = once((root: Recipe, facts: Facts): readonly Recipe[] => closure([root], facts));

/**
 * A recipe at `factor` batches with all below it: every line's amount, prepared grams and as purchased, exact.
 * Uses of a component are summed first, so a whole-pieces line rounds up once for the whole of what is asked.
 */
export const scale = (root: Recipe, factor: Rational | undefined, facts: Facts): Answer<RecipeNeed[]> => {
  const problems: Problem[] = [];
  const factors = new Map<string, Rational | undefined>([[root.key, factor]]);
  const needs: RecipeNeed[] = [];
  for (const recipe of closureOf(root, facts)) {
    const cup = cupOf(recipe, facts);
    const batches = factors.get(recipe.key);
    if (recipe.lines.length === 0) problems.push(noLines(recipe));
    const lines = recipe.lines.map((line) => lineNeed(line, recipe, batches, facts));
    for (const need of lines) problems.push(...need.problems);
    if (batches && isFar(batches) && cooksByTheClock(recipe)) problems.push(minutesFar(recipe, batches));
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
  if (need.amount && !need.batches) problems.push(noYield(component, need.unit));
  factors.set(component.key, need.batches && before?.plus(need.batches));
};
