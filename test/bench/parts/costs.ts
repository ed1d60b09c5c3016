import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { costOf } from '../../../src/core/costing.js';
import { costsMoved } from '../../../src/core/costs-moved.js';
import type { Facts } from '../../../src/core/facts/facts.js';
import type { Ingredient } from '../../../src/core/facts/ingredient.js';
import type { Recipe } from '../../../src/core/facts/recipe.js';
import { differing } from '../../../src/core/kitchen-costs/figures.js';
import {
  costsWith,
  exactCost,
  figureOf,
  type KitchenCosts,
  kitchenCosts,
} from '../../../src/core/kitchen-costs.js';
import { Rational } from '../../../src/core/quantity/rational.js';
import { scale } from '../../../src/core/scaling.js';
import { type Figure, meets } from '../figure.js';
import { deepKitchen, linesEach } from '../kitchen/deep.js';
import { within } from '../timing.js';

const [few, many] = [1_000, 10_000];
const rounds = 15;

/**
 * What all recipes of a kitchen cost, from scratch and after one price, in this process and without a database. Ten
 * kitchens of a tenth the size are worked out one after another, so that either run reads as many lines: a small kitchen
 * by itself would find all of its documents still in the processor's cache and leave no garbage to be collected.
 */
export const measureCosts = async (): Promise<Figure[]> => {
  const small = Array.from({ length: many / few }, (_, which) => deepKitchen(few, which));
  const large = deepKitchen(many);
  const [whole, tenth] = scratch([[large], small]);
  const growth = whole!.p50 / tenth!.p50;
  const of = `${many} recipes`;
  const full = figure(of, 'from scratch p50', whole!.p50);
  const ratio = figure(of, `beside ${few}`, growth, 'times');
  return [
    ...said(few, tenth!),
    figure(`${few} recipes`, 'by itself, again and again', scratch([small.slice(0, 1)])[0]!.p50),
    { ...full, target: meets(whole!.p50, { rule: 'under', limit: 500 }) },
    ...said(many, whole!).slice(1),
    { ...ratio, target: meets(growth, { rule: 'at most', limit: 12 }) },
    figure(
      of,
      'held',
      heldBy(() => allOf(large)),
      'MB',
    ),
    ...agreement(few, small[0]!),
    ...agreement(many, large),
    ...onePrice(large),
  ];
};

const figure = (of: string, what: string, value: number, unit: Figure['unit'] = 'ms'): Figure => ({
  part: 'costs',
  engine: `${linesEach} lines a recipe, four deep, in one process`,
  of,
  what,
  value,
  unit,
});

type Scratch = { first: number; p50: number; least: number };

const said = (recipes: number, { first, p50, least }: Scratch): Figure[] => {
  const of = `${recipes} recipes`;
  return [figure(of, 'from scratch p50', p50), figure(of, 'least', least), figure(of, 'first', first)];
};

/** Milliseconds for one kitchen, where each run works out all of a set; the sets in turn, so that what disturbs hits all. */
const scratch = (sets: readonly (readonly Facts[])[]): Scratch[] => {
  const run = (kitchens: readonly Facts[]): number =>
    timed(() => {
      for (const facts of kitchens) allOf(facts);
    }).ms / kitchens.length;
  const firsts = sets.map(run);
  const times = Array.from({ length: rounds }, () => sets.map(run));
  return firsts.map((first, i) => {
    const own = times.map((round) => round[i]!);
    return { first, p50: within(own, 50), least: Math.min(...own) };
  });
};

/** Every cost of a batch and a portion. Facts of one's own, so that nothing worked out before is at hand. */
const allOf = (facts: Facts): KitchenCosts => {
  const costs = kitchenCosts({ ...facts });
  for (const key of facts.recipes.keys()) figureOf(costs, key);
  return costs;
};

/** The price of an ingredient in most, in many and in few recipes changes: all that uses it, from what to what. */
const onePrice = (facts: Facts): Figure[] => {
  const costs = allOf(facts);
  const priced = [...costs.facts.ingredients.values()].filter(({ packs }) => packs.length > 0);
  const byUse = priced
    .map((one) => ({ one, recipes: usedIn(one, costs) }))
    .toSorted((a, b) => b.recipes - a.recipes);
  return [0, Math.floor(byUse.length / 20), Math.floor(byUse.length / 2)].flatMap((place) => {
    const { one, recipes } = byUse[place]!;
    const times = Array.from({ length: rounds * 5 }, (_, n) => {
      const changed = [dearer(one, n + 1)];
      return timed(() => costsMoved(costs, costsWith(costs, changed))).ms;
    });
    const of = `one price, in ${recipes} of them`;
    const p50 = figure(of, 'p50', within(times, 50));
    return [
      { ...p50, target: meets(p50.value, { rule: 'under', limit: 5 }) },
      figure(of, 'p95', within(times, 95)),
      figure(of, 'least', Math.min(...times)),
    ];
  });
};

/** How many recipes it is used in, through any depth. */
const usedIn = (one: Ingredient, costs: KitchenCosts): number =>
  differing(costs.figures, costsWith(costs, [dearer(one, 1)]).figures).filter((at) => costs.recipeAt[at])
    .length;

/** Dear enough that everything with it in moves. */
const dearer = (one: Ingredient, times: number): Ingredient => ({
  ...one,
  packs: one.packs.map((pack) => ({
    ...pack,
    prices: pack.prices.map((paid) => ({ ...paid, price: paid.price + times * 100_000 })),
  })),
});

/** How many recipes come out otherwise when each is scaled and costed by itself, in fractions alone. */
const agreement = (recipes: number, facts: Facts): Figure[] => {
  const costs = allOf(facts);
  const all = [...facts.recipes.values()];
  const wrong = all.filter((recipe) => !agrees(recipe, costs)).length;
  const complete = all.filter(({ key }) => figureOf(costs, key)!.complete).length;
  const of = `${recipes} recipes, by fractions`;
  const differ = figure(of, 'otherwise', wrong, 'recipes');
  return [
    { ...differ, target: meets(wrong, { rule: 'at most', limit: 0 }) },
    figure(of, 'complete', complete, 'recipes'),
  ];
};

const agrees = (recipe: Recipe, costs: KitchenCosts): boolean => {
  const { value } = costOf(scale(recipe, Rational.one, costs.facts).value, costs.facts);
  const { cost, complete } = value[0]!;
  const figure = figureOf(costs, recipe.key)!;
  const { portions } = recipe.yield;
  const portion = portions === null ? undefined : Number(cost.over(Rational.parse(portions)).round());
  return (
    figure.batch === Number(cost.round()) &&
    figure.complete === complete &&
    exactCost(costs, recipe.key).equals(cost) &&
    (portion === undefined || figure.each === portion)
  );
};

const timed = <T>(work: () => T): { ms: number; answer: T } => {
  const begun = performance.now();
  const answer = work();
  return { ms: performance.now() - begun, answer };
};

setFlagsFromString('--expose-gc');
const collect: () => void = runInNewContext('gc');

/** Megabytes that an answer takes while it is kept. */
const heldBy = (work: () => object): number => {
  collect();
  collect();
  const before = process.memoryUsage();
  const kept = new Set([work()]);
  collect();
  collect();
  const after = process.memoryUsage();
  const bytes = after.heapUsed + after.arrayBuffers - before.heapUsed - before.arrayBuffers;
  return kept.size && bytes / 1024 / 1024;
};
