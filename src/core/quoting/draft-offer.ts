import type { Event } from '../facts/event.js';
import type { Facts } from '../facts/facts.js';
import type { Offer } from '../facts/quote.js';
import type { Selling } from '../selling/selling.js';

/** A first offer of an event, for the cook to put into the client's words; `today` is the day it is open from. */
export const draftOffer = (_event: Event, _facts: Facts, _selling: Selling, _today: string): Offer => {
  throw new Error('not worked out yet');
};
