import type { Quote, QuoteState } from '../facts/quote.js';

/** How a quote stands on a day: issued and past the last day it may be accepted, it is expired. */
export const quoteNow = (quote: Quote, today: string): QuoteState | 'expired' => {
  const { validUntil } = quote.offer;
  return quote.state === 'issued' && validUntil !== null && validUntil < today ? 'expired' : quote.state;
};
