import { costOfEvent, packPrice } from '../costing.js';
import type { Event } from '../facts/event.js';
import type { Facts } from '../facts/facts.js';
import type { Ingredient } from '../facts/ingredient.js';
import { Rational } from '../quantity/rational.js';

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
  const before = costOfEvent(event, then).value;
  if (!before.complete) return [];
  const moved: PriceMoved[] = [];
  for (const was of then.ingredients.values()) {
    const is = today.ingredients.get(was.key);
    if (!is || JSON.stringify(is.packs) === JSON.stringify(was.packs)) continue;
    const priced = { ...was, packs: is.packs };
    const facts = { ...then, ingredients: new Map(then.ingredients).set(was.key, priced) };
    const after = costOfEvent(event, facts).value;
    const by = after.exact.minus(before.exact);
    if (after.complete && !by.isZero)
      moved.push({ ingredient: was.key, name: is.name, percent: percentOf(was, priced, then), by });
  }
  return moved.sort((a, b) => size(b.by).compare(size(a.by)) || (a.ingredient < b.ingredient ? -1 : 1));
};

const size = (value: Rational): Rational => (value.sign < 0 ? value.negated() : value);

const percentOf = (was: Ingredient, is: Ingredient, facts: Facts): Rational | undefined => {
  const [before, after] = [packPrice(was, facts), packPrice(is, facts)];
  if ('sentence' in before || 'sentence' in after || before.size.base !== after.size.base) return undefined;
  if (before.price.isZero) return undefined;
  const share = after.price.over(after.size.value).over(before.price.over(before.size.value));
  return share.minus(Rational.one).times(Rational.of(100));
};
