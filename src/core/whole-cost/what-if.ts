import type { Measure } from '../facts/common.js';
import type { Event } from '../facts/event.js';
import { byKey, type Facts } from '../facts/facts.js';
import type { Ingredient } from '../facts/ingredient.js';
import { toMinor } from '../money.js';
import { Rational } from '../quantity/rational.js';
import { latestPrice, preferredPack } from '../weighing.js';
import { withHeadCount } from './head-count.js';

/** A dish by its course and its own key. */
export type DishAt = { course: string; dish: string };

/** What might be otherwise, any of it or all together. */
export type WhatIf = {
  guests?: number;
  /** So many per cent more for the packs of an ingredient, below zero for less; exact. */
  dearer?: { ingredient: string; percent: Rational };
  /** Another of an ingredient's packs. */
  pack?: { ingredient: string; pack: string };
  without?: DishAt;
  /** Another size of a dish's portion. */
  portion?: DishAt & { portion: Measure };
};

/**
 * An event and its facts as they would be: nothing else changes, and what names nothing there changes nothing. A price
 * goes to a whole minor unit, halves up.
 */
export const whatIf = (event: Event, facts: Facts, change: WhatIf): { event: Event; facts: Facts } => {
  const { guests, dearer, pack, without, portion } = change;
  let changed = event;
  if (portion) changed = withDish(changed, portion, (dish) => [{ ...dish, portion: portion.portion }]);
  if (without) changed = withDish(changed, without, () => []);
  if (guests !== undefined) changed = withHeadCount(changed, guests);
  let known = facts;
  if (pack) known = withIngredient(known, pack.ingredient, (one) => preferring(one, pack.pack));
  if (dearer) known = withIngredient(known, dearer.ingredient, (one) => pricedUp(one, dearer.percent));
  return { event: changed, facts: known };
};

type Dish = Event['courses'][number]['dishes'][number];

const withDish = (event: Event, at: DishAt, change: (dish: Dish) => Dish[]): Event => ({
  ...event,
  courses: event.courses.map((course) =>
    course.key === at.course
      ? { ...course, dishes: course.dishes.flatMap((dish) => (dish.key === at.dish ? change(dish) : [dish])) }
      : course,
  ),
});

const withIngredient = (facts: Facts, key: string, change: (one: Ingredient) => Ingredient): Facts => {
  const found = facts.ingredients.get(key);
  if (!found) return facts;
  const others = [...facts.ingredients.values()].filter((one) => one !== found);
  return { ...facts, ingredients: byKey([...others, change(found)]) };
};

/** An ingredient whose lines are priced at another of its packs. */
const preferring = (ingredient: Ingredient, pack: string): Ingredient =>
  ingredient.packs.some(({ key }) => key === pack)
    ? { ...ingredient, packs: ingredient.packs.map((one) => ({ ...one, preferred: one.key === pack })) }
    : ingredient;

const hundred = Rational.of(100);

/** What stands for the pack that lines are priced at, so many per cent higher. */
const pricedUp = (ingredient: Ingredient, percent: Rational): Ingredient => {
  const pack = preferredPack(ingredient);
  const stands = pack && latestPrice(pack);
  if (!stands) return ingredient;
  const price = toMinor(Rational.of(stands.price).times(percent.plus(hundred)).over(hundred));
  const packs = ingredient.packs.map((one) =>
    one === pack
      ? { ...one, prices: one.prices.map((each) => (each === stands ? { ...each, price } : each)) }
      : one,
  );
  return { ...ingredient, packs };
};
