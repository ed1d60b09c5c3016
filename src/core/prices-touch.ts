import { costOfEvent } from './costing.js';
import type { Event } from './facts/event.js';
import { type Facts, factsOf } from './facts/facts.js';
import type { Ingredient } from './facts/ingredient.js';
import type { PriceMove } from './price-history.js';
import type { Rational } from './quantity/rational.js';
import { marginOf } from './selling/price.js';
import { selling } from './selling/selling.js';
import { ingredientUses } from './sheets/costing.js';
import { wholeCost } from './whole-cost/cost-of-party.js';
import type { WholeCost } from './whole-cost/whole-cost.js';

/** What moved prices do to an event: its cost at the old prices and now, and its margin at the price of today. */
export type Touched = {
  event: Event;
  before: WholeCost;
  after: WholeCost;
  /** Minor units, exact: what it costs more, below 0 for less. */
  more: Rational;
  /** Per cent of the price without tax; undefined without a price, or while a cost isn't known. */
  marginBefore: Rational | undefined;
  marginAfter: Rational | undefined;
  /** By ingredient what it costs more, the largest first. */
  by: { ingredient: Ingredient; more: Rational }[];
};

/**
 * The events whose cost, as used, isn't what it was at the old prices; those first that it touches most. `accepted`:
 * what clients accepted without tax, in minor units, by event; any other's price is as it is set now.
 */
export const eventsTouched = (
  events: readonly Event[],
  today: Facts,
  moves: readonly PriceMove[],
  accepted: ReadonlyMap<string, number> = new Map(),
): Touched[] => {
  const then = factsThen(today, moves);
  const touched = events
    // What was served is counted at the prices that were kept with it.
    .filter(({ served }) => !served)
    .map((event) => touchedBy(event, then, today, moves, accepted.get(event.key)))
    .filter(({ by }) => by.length > 0);
  return touched.sort((a, b) => size(b.more).compare(size(a.more)) || (a.event.date < b.event.date ? -1 : 1));
};

const touchedBy = (
  event: Event,
  then: Facts,
  today: Facts,
  moves: readonly PriceMove[],
  accepted: number | undefined,
): Touched => {
  const [before, after] = [wholeCost(event, then, 'used'), wholeCost(event, today, 'used')];
  return {
    event,
    before,
    after,
    more: after.exact.minus(before.exact),
    ...margins(accepted ?? selling(event, after, factsOf(event, today).kitchen).net, before, after),
    by: moreBy(event, then, today, moves),
  };
};

/** Both at the price as it stands now, so that a price that is worked out from its cost doesn't hide what moved. */
const margins = (net: number, before: WholeCost, after: WholeCost) => ({
  marginBefore: before.complete ? marginOf(before.exact, net) : undefined,
  marginAfter: after.complete ? marginOf(after.exact, net) : undefined,
});

const moreBy = (event: Event, then: Facts, today: Facts, moves: readonly PriceMove[]): Touched['by'] => {
  const usesOf = (facts: Facts) =>
    new Map(
      ingredientUses(costOfEvent(event, facts).value, facts).map((use) => [use.ingredient.key, use.exact]),
    );
  const [was, is] = [usesOf(then), usesOf(today)];
  return moves
    .flatMap(({ ingredient }) => {
      const [before, after] = [was.get(ingredient.key), is.get(ingredient.key)];
      return before && after && !before.equals(after) ? [{ ingredient, more: after.minus(before) }] : [];
    })
    .sort((a, b) => size(b.more).compare(size(a.more)));
};

/** The facts with what moved at its old price; all else as it stands. */
const factsThen = (today: Facts, moves: readonly PriceMove[]): Facts => {
  const ingredients = new Map(today.ingredients);
  for (const { ingredient, pack, before } of moves) {
    const known = ingredients.get(ingredient.key);
    if (!known) continue;
    const packs = known.packs.map((one) => (one.key === pack.key ? { ...one, prices: [before.price] } : one));
    ingredients.set(ingredient.key, { ...known, packs });
  }
  return { ...today, ingredients };
};

const size = (value: Rational): Rational => (value.sign < 0 ? value.negated() : value);
