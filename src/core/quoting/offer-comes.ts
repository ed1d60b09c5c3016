import type { Offer, Option } from '../facts/quote.js';

export type OfferLine = { words: string; count: number; each: number; amount: number };

/** What an option comes to, in minor units: lines as named, added to the minimum, taken off, then tax. */
export type OfferTotal = {
  lines: OfferLine[];
  gross: number;
  minimum: number;
  discount: number;
  net: number;
  tax: number;
  total: number;
};

/** What an option of an offer comes to for so many guests, those it is for unless said otherwise. */
export const offerComes = (_option: Option, _offer: Offer, _guests = _offer.guests): OfferTotal => {
  throw new Error('not worked out yet');
};
