import type { Event } from './facts/event.js';
import type { Facts } from './facts/facts.js';
import type { Ingredient } from './facts/ingredient.js';
import { wholeCost } from './whole-cost/cost-of-party.js';
import { withHeadCount } from './whole-cost/head-count.js';
import type { PackPart, WholeCost } from './whole-cost/whole-cost.js';

/** What a party comes to, in minor units, and whether all of it is known. */
export type Sum = { total: number; complete: boolean };

/** What shrinks when fewer come to a party, or it is called off: costs in whole packs, shared with events beside it. */
export type Fewer = {
  guests: { before: number; after: number };
  /** The food of the party itself, and its whole cost; nothing once it is called off. */
  food: { before: Sum; after: Sum };
  whole: { before: Sum; after: Sum };
  /** The events beside it whose share of the packs changes. */
  beside: { event: Event; before: Sum; after: Sum }[];
  /** All packs bought, for it and the events beside it. */
  shopping: { before: Sum; after: Sum };
  /** Whole packs to buy over all of them, where that changes. */
  packs: { ingredient: Ingredient; before: number; after: number }[];
};

/**
 * What shrinks with a lower head-count, or with 0 guests when it is called off, beside other events that packs are
 * bought for together. Whole packs, minor units; food that is bought already is not counted, nor what others must be
 * paid all the same.
 */
export const fewer = (event: Event, guests: number, beside: readonly Event[], facts: Facts): Fewer => {
  const others = beside.filter(({ key }) => key !== event.key);
  const changed = guests > 0 ? withHeadCount(event, guests) : undefined;
  const costs = (of: Event, all: readonly Event[]) => wholeCost(of, facts, 'bought', all);
  const own = { before: costs(event, others), after: changed && costs(changed, others) };
  const then = others.map((other) => {
    const rest = others.filter((one) => one !== other);
    return {
      event: other,
      before: costs(other, [...rest, event]),
      after: costs(other, changed ? [...rest, changed] : rest),
    };
  });
  const before = [own.before, ...then.map((one) => one.before)];
  const after = [...(own.after ? [own.after] : []), ...then.map((one) => one.after)];
  return {
    guests: { before: own.before.guests, after: guests },
    food: { before: foodOf([own.before]), after: foodOf(own.after ? [own.after] : []) },
    whole: { before: wholeOf(own.before), after: own.after ? wholeOf(own.after) : none },
    beside: then
      .filter((one) => one.before.food.cost !== one.after.food.cost)
      .map((one) => ({ event: one.event, before: foodOf([one.before]), after: foodOf([one.after]) })),
    shopping: { before: foodOf(before), after: foodOf(after) },
    packs: packsMoved(own.before, before, after),
  };
};

const none: Sum = { total: 0, complete: true };

const wholeOf = ({ total, complete }: WholeCost): Sum => ({ total, complete });

const foodOf = (costs: readonly WholeCost[]): Sum => ({
  total: costs.reduce((all, { food }) => all + food.packs.reduce((sum, { cost }) => sum + cost, 0), 0),
  complete: costs.every(({ food }) => food.complete),
});

/** By ingredient of the event the whole packs over all, which every event that shares them states alike. */
const packsMoved = (
  own: WholeCost,
  before: readonly WholeCost[],
  after: readonly WholeCost[],
): Fewer['packs'] => {
  const packsOf = (costs: readonly WholeCost[], key: string): number => {
    const kinds = new Map<string, PackPart>();
    for (const { food } of costs)
      for (const part of food.packs)
        if (part.ingredient.key === key) kinds.set(`${part.each} ${part.packs}`, part);
    return [...kinds.values()].reduce((all, { packs }) => all + packs, 0);
  };
  return own.food.packs
    .map(({ ingredient }) => ({
      ingredient,
      before: packsOf(before, ingredient.key),
      after: packsOf(after, ingredient.key),
    }))
    .filter((one) => one.before !== one.after);
};
