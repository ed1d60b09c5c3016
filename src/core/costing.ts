import type { Event } from './facts/event.js';
import type { Facts } from './facts/facts.js';
import type { Ingredient } from './facts/ingredient.js';
import type { Kitchen } from './facts/kitchen.js';
import { once } from './lookup.js';
import { allocate, toMinor } from './money.js';
import type { Answer, Problem } from './problem.js';
import { guessedPrice, missingFact, noPreferredPack, noPrice } from './problems.js';
import { exact } from './quantity/amount.js';
import { Rational, sum } from './quantity/rational.js';
import { type Base, type Quantity, quantity } from './quantity/units.js';
import { type DishNeed, headCount, requirementsOf } from './requirements.js';
import type { LineNeed, RecipeNeed } from './scaling.js';
import { boughtIn, isMissing, latestPrice, preferredPack } from './weighing.js';

export type PackPrice = { price: Rational; size: Quantity; date: string; guess: boolean };

/** The pack and price an ingredient's lines are priced at, in minor units; or the problem that leaves it open. */
export const packPrice = (ingredient: Ingredient, facts: Facts): PackPrice | Problem => {
  const pack = preferredPack(ingredient);
  if (!pack) return ingredient.packs.length > 1 ? noPreferredPack(ingredient) : noPrice(ingredient);
  const price = latestPrice(pack);
  if (!price) return noPrice(ingredient);
  const size = quantity(exact(pack.size.amount), pack.size.unit, facts.kitchen.cup);
  // An empty pack can't be saved; where one slipped in, a price for nothing is no price.
  if (size.value.isZero) return noPrice(ingredient);
  return { price: Rational.of(price.price), size, date: price.date, guess: price.guess };
};

/** What one gram, millilitre or piece as purchased costs, and what leaves that open or a guess. */
type Rate = { rate: Rational | undefined; problems: readonly Problem[] };
type Rates = Map<Ingredient, Rate & { base: Base | undefined }>;

const ratesOf = once((_kitchen: Kitchen, _facts: Facts): Rates => new Map());

/** The rate of an ingredient by a measure, worked out once for the lines that ask for it one after another. */
export const rateOf = (
  ingredient: Ingredient,
  base: Base | undefined,
  facts: Facts,
  rates = ratesOf(facts.kitchen, facts),
): Rate => {
  // Nearly every ingredient is asked for by one measure alone.
  const known = rates.get(ingredient);
  if (known && known.base === base) return known;
  const { rate, problems } = workOutRate(ingredient, base, facts);
  const found = { base, rate, problems };
  rates.set(ingredient, found);
  return found;
};

const none: readonly never[] = [];

const workOutRate = (ingredient: Ingredient, base: Base | undefined, facts: Facts): Rate => {
  if (ingredient.notBought) return { rate: Rational.zero, problems: none };
  const pack = packPrice(ingredient, facts);
  if ('sentence' in pack) return { rate: undefined, problems: [pack] };
  const problems = pack.guess ? [guessedPrice(ingredient, pack.date)] : none;
  if (base === undefined) return { rate: undefined, problems };
  const inPack = boughtIn(ingredient, { value: Rational.one, base }, pack.size.base);
  if (isMissing(inPack)) return { rate: undefined, problems: [...problems, missingFact(ingredient, inPack)] };
  return { rate: inPack.over(pack.size.value).times(pack.price), problems };
};

/**
 * Usage cost of an amount as purchased: its share of the preferred pack at the price that stands, in minor units,
 * exact. What isn't bought costs a true zero; without a price the cost is undefined and `priceProblems` say why.
 */
const usageCost = (
  ingredient: Ingredient,
  bought: Quantity | undefined,
  facts: Facts,
): Rational | undefined => {
  if (ingredient.notBought) return Rational.zero;
  const rate = bought && rateOf(ingredient, bought.base, facts).rate;
  return rate && bought.value.times(rate);
};

/** What leaves the cost of scaled recipes open: prices that are missing or guessed, facts that a price waits for. */
export const priceProblems = (needs: readonly RecipeNeed[], facts: Facts): Problem[] => {
  const rates = ratesOf(facts.kitchen, facts);
  const problems: Problem[] = [];
  for (const { lines } of needs.toReversed())
    for (const { ingredient, line, bought } of lines)
      if (ingredient && line.amount !== null)
        problems.push(...rateOf(ingredient, bought?.base, facts, rates).problems);
  return problems;
};

/** A line's usage cost; a component line carries its share of what the component costs. */
export type LineCost = { need: LineNeed; cost: Rational | undefined };
export type RecipeCost = { need: RecipeNeed; lines: LineCost[]; cost: Rational; complete: boolean };

/**
 * Usage costs of a scaled recipe and of every component in it, in minor units, exact. The costs known are summed;
 * `complete` is false when a line's cost isn't known, and the problems name why.
 */
export const costOf = (needs: readonly RecipeNeed[], facts: Facts): Answer<RecipeCost[]> => {
  const costs = new Map<string, RecipeCost>();
  for (const need of [...needs].reverse()) {
    const lines = need.lines.map((line) => ({ need: line, cost: lineCost(line, costs, facts) }));
    const known = ({ cost, need: { line, component } }: LineCost) =>
      (cost !== undefined || line.amount === null) && (!component || costs.get(component.key)!.complete);
    const complete = need.factor !== undefined && lines.length > 0 && lines.every(known);
    const cost = sum(lines.map((line) => line.cost ?? Rational.zero));
    costs.set(need.recipe.key, { need, lines, cost, complete });
  }
  return { value: needs.map((need) => costs.get(need.recipe.key)!), problems: priceProblems(needs, facts) };
};

const lineCost = (
  need: LineNeed,
  costs: ReadonlyMap<string, RecipeCost>,
  facts: Facts,
): Rational | undefined => {
  if (need.ingredient) {
    if (need.line.amount === null) return need.ingredient.notBought ? Rational.zero : undefined;
    return usageCost(need.ingredient, need.bought, facts);
  }
  const component = costs.get(need.component!.key)!;
  const { factor } = component.need;
  if (!need.batches || !factor) return undefined;
  return factor.isZero ? Rational.zero : component.cost.times(need.batches.over(factor));
};

export type DishCost = {
  need: DishNeed;
  recipes: RecipeCost[];
  exact: Rational;
  complete: boolean;
  /** This dish's part of the event's total, and its own lines' parts of that, in minor units. */
  cost: number;
  lines: number[];
};

export type CourseCost = { name: string; key: string; dishes: DishCost[] };

export type EventCost = {
  courses: CourseCost[];
  guests: number;
  /** Minor units, rounded once; the dishes add up to it. Incomplete totals hold only what is known. */
  total: number;
  exact: Rational;
  complete: boolean;
  /** Minor units, rounded half up, for showing; undefined without guests. */
  aGuest: number | undefined;
};

/**
 * Food cost of an event by usage: each dish and line in whole minor units that add up to the total, which is
 * rounded once (halves up) from exact figures; and the cost of one guest, heads not portions.
 */
export const costOfEvent = (
  event: Event,
  facts: Facts,
  needs = requirementsOf(event, facts),
): Answer<EventCost> => {
  const problems: Problem[] = [];
  const costed = needs.map(({ course, dishes }) => ({
    course,
    dishes: dishes.map((need) => {
      const { value, problems: found } = costOf(need.recipes, facts);
      problems.push(...need.problems, ...found);
      return { need, recipes: value };
    }),
  }));
  const flat = costed.flatMap(({ dishes }) => dishes);
  const total = sum(flat.map(({ recipes }) => recipes[0]!.cost));
  const parts = allocate(
    toMinor(total),
    flat.map(({ recipes }) => recipes[0]!.cost),
  );
  let next = 0;
  const courses = costed.map(({ course, dishes }) => ({
    name: course.name,
    key: course.key,
    dishes: dishes.map(({ need, recipes }) => dishCost(need, recipes, parts[next++]!)),
  }));
  const guests = headCount(event);
  const complete = courses.every(({ dishes }) => dishes.every((dish) => dish.complete));
  const aGuest = guests > 0 ? toMinor(total.over(Rational.of(guests))) : undefined;
  return { value: { courses, guests, total: toMinor(total), exact: total, complete, aGuest }, problems };
};

const dishCost = (need: DishNeed, recipes: RecipeCost[], cost: number): DishCost => {
  const { cost: whole, complete, lines } = recipes[0]!;
  const shares = lines.map((line) => line.cost ?? Rational.zero);
  return { need, recipes, exact: whole, complete, cost, lines: allocate(cost, shares) };
};
