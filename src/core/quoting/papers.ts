import type { NumberedPaper, Payment, Quote } from '../facts/quote.js';

/** The number and day of a paper; the number is the next of its kind. */
export type Numbered = { number: number; date: string };

/** An invoice of an accepted quote: what it comes to, and what of it was paid by that day. */
export const invoiceOf = (_quote: Quote, _payments: readonly Payment[], _as: Numbered): NumberedPaper => {
  throw new Error('not worked out yet');
};

/** A receipt of one payment of an accepted quote; `payments` are all of the event. */
export const receiptOf = (
  _quote: Quote,
  _payment: Payment,
  _payments: readonly Payment[],
  _as: Numbered,
): NumberedPaper => {
  throw new Error('not worked out yet');
};

/** A credit that takes a whole invoice back. */
export const creditOf = (_invoice: NumberedPaper, _as: Numbered): NumberedPaper => {
  throw new Error('not worked out yet');
};
