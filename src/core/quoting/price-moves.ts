import { costOfEvent, packPrice } from '../costing.js';
import type { Event } from '../facts/event.js';
import type { Facts } from '../facts/facts.js';
import type { Ingredient } from '../facts/ingredient.js';
import { Rational } from '../quantity/rational.js';
import { ingredientUses } from '../sheets/costing.js';

/** An ingredient whose price moved. */
export type PriceMoved = {
  ingredient: string;
  name: string;
  /** Of its unit price, exact, below 0 when it fell; undefined where the packs can't be compared. */
  percent: Rational | undefined;
  /** By how much it alone moves the cost of the food as it was quoted, in minor units, exact. */
  by: Rational;
};

/**
 * The ingredients whose price of today moves what an event's food cost by the facts kept with it, those that move it
 * most first. Where one of the two costs is not known, nothing is said of that ingredient.
 */
export const priceMoves = (event: Event, then: Facts, today: Facts): PriceMoved[] => {
  const repriced = atPricesOf(today, then);
  const before = usesOf(event, then);
  return [...usesOf(event, repriced)]
    .flatMap(([key, is]) => {
      const was = before.get(key);
      if (!was?.exact || !is.exact || !was.complete || !is.complete || was.exact.equals(is.exact)) return [];
      const percent = percentOf(was.ingredient, is.ingredient, then);
      const name = today.ingredients.get(key)?.name ?? is.ingredient.name;
      return [{ ingredient: key, name, percent, by: is.exact.minus(was.exact) }];
    })
    .sort((a, b) => size(b.by).compare(size(a.by)) || (a.ingredient < b.ingredient ? -1 : 1));
};

/** What was kept, with the packs and prices of today. */
const atPricesOf = (today: Facts, then: Facts): Facts => ({
  ...then,
  ingredients: new Map(
    [...then.ingredients].map(([key, was]) => [
      key,
      { ...was, packs: today.ingredients.get(key)?.packs ?? was.packs },
    ]),
  ),
});

const usesOf = (event: Event, facts: Facts) =>
  new Map(ingredientUses(costOfEvent(event, facts).value, facts).map((use) => [use.ingredient.key, use]));

const size = (value: Rational): Rational => (value.sign < 0 ? value.negated() : value);

const percentOf = (was: Ingredient, is: Ingredient, facts: Facts): Rational | undefined => {
  const [before, after] = [packPrice(was, facts), packPrice(is, facts)];
  if ('sentence' in before || 'sentence' in after || before.size.base !== after.size.base) return undefined;
  if (before.price.isZero) return undefined;
  const share = after.price.over(after.size.value).over(before.price.over(before.size.value));
  return share.minus(Rational.one).times(Rational.of(100));
};
