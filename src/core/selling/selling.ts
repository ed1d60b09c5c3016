import type { Event, Group } from '../facts/event.js';
import type { Kitchen } from '../facts/kitchen.js';
import type { SellingPrice } from '../facts/price.js';
import type { Problem } from '../problem.js';
import type { Rational } from '../quantity/rational.js';
import type { WholeCost } from '../whole-cost/whole-cost.js';

/** What a group of guests comes to; `each` is undefined where a total is shared out that does not divide. */
export type SoldRow = { group: Group; each: number | undefined; guests: number; amount: number };

/** How a price stands beside the least margin a kitchen lives on. */
export type Floor = {
  /** Per cent, as the kitchen states it. */
  margin: string;
  /** Minor units that the price without tax is short of it, rounded up; 0 when reached, undefined without a price. */
  short: number | undefined;
  /** The least price that reaches it, as named: a guest, or of the event where a total is asked; else undefined. */
  aGuest: number | undefined;
  total: number | undefined;
};

/** What an event is sold at, in minor units; all 0 without rows while no price can be said. */
export type Selling = {
  asked: SellingPrice['by'];
  /** The full price of a guest as named; undefined where there is none. */
  aGuest: number | undefined;
  /** Groups that come, in the order of the event; they sum to `gross`. */
  rows: SoldRow[];
  gross: number;
  /** What is added to reach the minimum; 0 if none. */
  minimum: number;
  /** What is taken off gross and minimum. */
  discount: number;
  net: number;
  tax: number;
  total: number;
  /** Per cent of net, exact; undefined while the cost is incomplete or there is no price. */
  margin: Rational | undefined;
  /** undefined while the kitchen states none, or the cost is incomplete. */
  floor: Floor | undefined;
  problems: Problem[];
};

export type Costed = Pick<WholeCost, 'exact' | 'complete' | 'guests' | 'food'>;

/**
 * What an event is sold at and what that leaves. In this order: a price for each group's guests, what is added to
 * reach the minimum, what is taken off, tax.
 */
export const selling = (_event: Event, _cost: Costed, _kitchen: Kitchen): Selling => {
  throw new Error('not worked out yet');
};
