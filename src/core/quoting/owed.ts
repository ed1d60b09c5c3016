import type { Cancellation } from '../facts/price.js';
import type { Offer } from '../facts/quote.js';

/** What the terms say is owed when a party is called off on a day; `owed` is undefined where they say nothing. */
export type OwedIfCancelled = {
  daysBefore: number;
  /** The step of the terms that holds; undefined before the first of them. */
  step: Cancellation | undefined;
  owed: number | undefined;
  /** The next step, and the first day it holds; undefined when none comes. */
  next: { step: Cancellation; from: string } | undefined;
};

export const owedIfCancelled = (_offer: Offer, _total: number, _day: string): OwedIfCancelled => {
  throw new Error('not worked out yet');
};
