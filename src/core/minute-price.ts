import { priceBy, startingWith } from './copy-costs.js';
import type { Event } from './facts/event.js';
import type { Facts } from './facts/facts.js';
import { type Selling, selling } from './selling/selling.js';
import { wholeCost } from './whole-cost/cost-of-party.js';
import { withHeadCount } from './whole-cost/head-count.js';
import type { WholeCost } from './whole-cost/whole-cost.js';

/** What a menu once cooked would cost and be sold at today for so many guests. */
export type MinutePrice = {
  event: Event;
  cost: WholeCost;
  sold: Selling;
  /** firm: every price stands; guess: a price is a guess; least: something is missing, so it costs at least this. */
  holds: 'firm' | 'guess' | 'least';
};

/**
 * A price in a minute: the menu of an event with its costs beside the food, or the kitchen's usual ones, for so many
 * guests, from the prices and recipes of today. The price keeps a margin, per cent; where a cost is missing it is the
 * least that what is known would take. Minor units.
 */
export const minutePrice = (
  from: Event,
  guests: number,
  margin: string | null,
  facts: Facts,
): MinutePrice => {
  const { kitchen } = facts;
  const today = withHeadCount({ ...from, served: null, state: 'enquiry' }, guests);
  const { costs, price } = startingWith(from, today, kitchen);
  const by = margin === null ? null : { margin };
  const event: Event = { ...today, costs, price: priceBy(price, by, kitchen) };
  const cost = wholeCost(event, facts, 'used');
  const food = { ...cost.food, complete: true };
  // What is missing only adds to a cost, so the known part gives a price that can't be too high.
  const sold = selling(event, cost.complete ? cost : { ...cost, food, complete: true }, kitchen);
  const guessed = cost.problems.some(({ code }) => code === 'guessed-price');
  return { event, cost, sold, holds: !cost.complete ? 'least' : guessed ? 'guess' : 'firm' };
};
