import type { Event } from '../facts/event.js';
import type { Facts } from '../facts/facts.js';
import type { Costed } from '../selling/selling.js';
import { wholeCost } from './cost-of-party.js';
import type { CostView } from './whole-cost.js';

/**
 * The cost that a price follows from which is set by margin or by food cost: with the food as used, in either view, so
 * that a party has one price, and what others buy beside it does not move that.
 */
export const askingCost = (event: Event, today: Facts, seen: Costed & { view: CostView }): Costed => {
  const { by } = event.price;
  const follows = by !== null && ('margin' in by || 'foodCost' in by);
  return follows && seen.view === 'bought' ? wholeCost(event, today, 'used') : seen;
};
