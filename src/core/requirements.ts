import { batchesFor, cupOf, type Makes, makes } from './batch.js';
import type { Dish, Eaters, Event } from './facts/event.js';
import type { Facts } from './facts/facts.js';
import type { Recipe } from './facts/recipe.js';
import { once, recipeOf } from './lookup.js';
import type { Problem } from './problem.js';
import { noYield } from './problems.js';
import { exact } from './quantity/amount.js';
import { Rational } from './quantity/rational.js';
import { type Quantity, quantity } from './quantity/units.js';
import { type RecipeNeed, scale } from './scaling.js';

export type DishNeed = {
  dish: Dish;
  recipe: Recipe;
  portions: Rational;
  /** Grams or millilitres of one portion, where known. */
  portion: Quantity | undefined;
  /** The dish's own recipe first, then every component after all that use it. */
  recipes: RecipeNeed[];
  problems: Problem[];
};

/** How many of each guest group eat a dish, before portion factors; a group not named eats none. */
export const eatersOf = (eaters: Eaters, event: Event): Map<string, Rational> => {
  const counts = new Map<string, Rational>();
  for (const group of event.groups) {
    const guests = Rational.of(group.guests);
    if ('everybody' in eaters) counts.set(group.key, guests);
    else if ('shares' in eaters) {
      const share = eaters.shares.find((s) => s.group === group.key);
      counts.set(
        group.key,
        share ? guests.times(exact(share.percent)).over(Rational.of(100)) : Rational.zero,
      );
    } else {
      counts.set(group.key, Rational.of(eaters.counts.find((c) => c.group === group.key)?.guests ?? 0));
    }
  }
  return counts;
};

/** All guests of an event, heads not portions. */
export const headCount = (event: Event): number =>
  event.groups.reduce((total, group) => total + group.guests, 0);

/**
 * Portions to cook of a dish: eaters of each group times its portion factor, plus over-catering; exact, and
 * rounded up to whole pieces only where the recipe goes by the piece.
 */
export const portionsOf = (dish: Dish, recipe: Recipe, event: Event): Rational => {
  const eaters = eatersOf(dish.eaters, event);
  let portions = Rational.zero;
  for (const group of event.groups)
    portions = portions.plus(eaters.get(group.key)!.times(exact(group.portion)));
  const over = exact(event.overCatering).over(Rational.of(100)).plus(Rational.one);
  const asked = portions.times(over);
  return recipe.byPiece ? asked.roundedUp() : asked;
};

const needsOf = once((_event: Event, _facts: Facts) => new Map<Dish, DishNeed>());

/** One dish of an event with its portions and all it needs, through any depth; exact. */
export const dishNeed = (dish: Dish, event: Event, facts: Facts): DishNeed => {
  const needs = needsOf(event, facts);
  const need = needs.get(dish) ?? workOut(dish, event, facts);
  needs.set(dish, need);
  return need;
};

const workOut = (dish: Dish, event: Event, facts: Facts): DishNeed => {
  const recipe = recipeOf(dish.recipe, facts);
  const portions = portionsOf(dish, recipe, event);
  const cup = cupOf(recipe, facts);
  const made = makes(recipe, facts);
  const stated = dish.portion ? quantity(exact(dish.portion.amount), dish.portion.unit, cup) : undefined;
  const asked = stated
    ? { value: stated.value.times(portions), base: stated.base }
    : { value: portions, base: 'portion' };
  const factor = batchesFor(made, asked);
  const { value: recipes, problems } = scale(recipe, factor, facts);
  if (!factor) problems.unshift(noYield(recipe, stated ? stated.base : 'portion'));
  return { dish, recipe, portions, portion: stated ?? portionOf(made), recipes, problems };
};

const portionOf = (made: Makes): Quantity | undefined => {
  if (!made.portions || made.portions.isZero) return undefined;
  if (made.g) return { value: made.g.over(made.portions), base: 'g' };
  return made.ml && { value: made.ml.over(made.portions), base: 'ml' };
};

export type CourseNeed = { course: Event['courses'][number]; dishes: DishNeed[] };

/** Everything an event needs, course by course and dish by dish; a done event from the facts it was served with. */
export const requirementsOf = (event: Event, facts: Facts): CourseNeed[] =>
  event.courses.map((course) => ({
    course,
    dishes: course.dishes.map((dish) => dishNeed(dish, event, facts)),
  }));

/** Problems without repeats, worst first, otherwise in the order they came up. */
export const worstFirst = (problems: readonly Problem[]): Problem[] => {
  const seen = new Set<string>();
  const rank = { stop: 0, ask: 1, check: 2 };
  return [...problems]
    .sort((a, b) => rank[a.weight] - rank[b.weight])
    .filter(({ sentence }) => !seen.has(sentence) && seen.add(sentence));
};
