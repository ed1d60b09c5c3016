import type { Facts } from './facts/facts.js';
import type { Ingredient } from './facts/ingredient.js';
import { Book } from './kitchen-costs/book.js';
import {
  exactFigure,
  type Figures,
  type Given,
  minorOver,
  workOut,
  workOutAgain,
} from './kitchen-costs/figures.js';
import { type Priced, pricedBy } from './kitchen-costs/priced-by.js';
import { guess, open, reach, SumsWritten } from './kitchen-costs/sums.js';
import { UnitCosts, unitCost } from './kitchen-costs/unit-costs.js';
import { writeCosts } from './kitchen-costs/write.js';
import { same } from './merge.js';
import type { Problem } from './problem.js';
import { Rational } from './quantity/rational.js';

type Place = { at: number; priced: Priced | undefined };

/** What every recipe of a kitchen costs, by these facts and no others. */
export type KitchenCosts = {
  facts: Facts;
  figures: Figures;
  units: UnitCosts;
  /** By recipe: the place of its cost, and what its cost is said by. */
  places: ReadonlyMap<string, Place>;
  /** By place: the recipe whose cost stands there. */
  recipeAt: readonly (string | undefined)[];
  /** What leaves a recipe's own lines open, by the place of what they cost. */
  reasons: ReadonlyMap<number, readonly Problem[]>;
};

/**
 * What one batch of a recipe costs by usage, in whole minor units, and one portion of it (a kilo or litre where it is
 * not counted in portions), each rounded once, halves up, from the exact cost.
 */
export type RecipeFigure = {
  batch: number;
  /** undefined when nobody has said how much it makes. */
  each: number | undefined;
  unit: Priced['unit'] | undefined;
  /** false when a cost in it isn't known; then the figures hold only what is. */
  complete: boolean;
  /** true when a price in it is a guess. */
  guess: boolean;
};

/**
 * What one batch of every recipe costs by itself, as `costOf(scale(recipe, 1))` answers for each, all at once: what
 * recipes share is worked out once. The figures are exact; see kitchen-costs/near.ts for how they come fast.
 */
export const kitchenCosts = (facts: Facts): KitchenCosts => {
  const written = new SumsWritten(facts.recipes.size * 24);
  const units = new UnitCosts(facts.ingredients.keys(), written);
  const book = new Book(facts, written, units);
  writeCosts(book);
  const sums = written.done();
  const places = new Map<string, Place>();
  const recipeAt = new Array<string | undefined>(sums.size);
  const reasons = new Map<number, readonly Problem[]>();
  for (const [number, recipe] of book.recipes.entries()) {
    const at = written.placeOf(book.cost[number]!);
    places.set(recipe.key, { at, priced: pricedBy(recipe, facts) });
    recipeAt[at] = recipe.key;
  }
  for (const [number, problems] of book.reasons)
    reasons.set(written.placeOf(book.straight[number]!), problems);
  return { facts, figures: workOut(sums, units.costs(facts)), units, places, recipeAt, reasons };
};

/** What a recipe costs; undefined for one that the kitchen doesn't have. */
export const figureOf = ({ figures, places }: KitchenCosts, recipe: string): RecipeFigure | undefined => {
  const place = places.get(recipe);
  if (!place) return undefined;
  const { at, priced } = place;
  const marks = figures.marks[at]!;
  return {
    batch: minorOver(figures, at, Rational.one, 1),
    each: priced && minorOver(figures, at, priced.made, priced.near),
    unit: priced?.unit,
    complete: (marks & open) === 0,
    guess: (marks & guess) !== 0,
  };
};

/** The exact cost of one batch in minor units, as far as it is known. */
export const exactCost = ({ figures, places }: KitchenCosts, recipe: string): Rational =>
  exactFigure(figures, places.get(recipe)!.at);

/** What leaves the cost of a recipe open or makes it a guess, in it and in what is in it, each said once. */
export const gapsOf = (
  { facts, figures, places, units, reasons }: KitchenCosts,
  recipe: string,
): Problem[] => {
  const found = new Map<string, Problem>();
  for (const at of reach(figures.sums, [places.get(recipe)!.at], false).reverse()) {
    if (figures.marks[at] === 0) continue;
    const asked = units.asked[at];
    for (const problem of asked ? unitCost(asked, facts).problems : (reasons.get(at) ?? []))
      found.set(problem.sentence, problem);
  }
  return [...found.values()];
};

/** The costs once some ingredients stand otherwise; where prices alone moved, only what uses these is worked out. */
export const costsWith = (before: KitchenCosts, changed: readonly Ingredient[]): KitchenCosts => {
  const ingredients = new Map(before.facts.ingredients);
  for (const one of changed) ingredients.set(one.key, one);
  return costsAfter(before, { ...before.facts, ingredients }, changed);
};

/** The costs by facts of today; from earlier ones where nothing but prices moved since. */
export const costsBy = (facts: Facts, before: KitchenCosts | undefined): KitchenCosts => {
  if (!before || !sameGround(before, facts)) return kitchenCosts(facts);
  const known = before.facts.ingredients;
  return costsAfter(
    before,
    facts,
    [...facts.ingredients.values()].filter((one) => known.get(one.key) !== one),
  );
};

const sameGround = ({ facts: before, units }: KitchenCosts, now: Facts): boolean =>
  units.asked.every(({ ingredient }) => now.ingredients.has(ingredient)) &&
  before.recipes.size === now.recipes.size &&
  [...now.recipes.values()].every((one) => before.recipes.get(one.key) === one) &&
  before.kitchen.cup === now.kitchen.cup &&
  before.kitchen.units === now.kitchen.units;

/** What the lines turn on, prices apart: what is bought for them, and the name that problems call it by. */
const weighing = ['name', 'notBought', 'edibleYield', 'cookedYields', 'density', 'weights'] as const;

const costsAfter = (before: KitchenCosts, facts: Facts, changed: readonly Ingredient[]): KitchenCosts => {
  const given = new Map<number, Given>();
  for (const ingredient of changed) {
    const was = before.facts.ingredients.get(ingredient.key);
    if (!was) continue;
    if (weighing.some((fact) => !same(was[fact], ingredient[fact]))) return kitchenCosts(facts);
    for (const asked of before.units.ofIngredient(ingredient.key))
      given.set(asked.at, unitCost(asked, facts));
  }
  return { ...before, facts, figures: workOutAgain(before.figures, given) };
};
