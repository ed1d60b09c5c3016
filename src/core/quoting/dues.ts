import type { Offer, Payment } from '../facts/quote.js';

/** `date` is null while it is due on an acceptance that has not come. */
export type DueSum = { words: string; amount: number; date: string | null };

/** The deposit, instalments and balance of an offer, in minor units; they add up to the total. */
export const duesOf = (_offer: Offer, _total: number, _accepted: string | null): DueSum[] => {
  throw new Error('not worked out yet');
};

/** `open`: what of a due is not paid yet; `late`: its day is past and something is open. */
export type DueOpen = DueSum & { open: number; late: boolean };

/** What is paid and owed on a day; payments count for the dues in order. `owed` is below 0 when too much was paid. */
export type Account = { paid: number; owed: number; dues: DueOpen[] };

export const accountOf = (
  _total: number,
  _dues: readonly DueSum[],
  _payments: readonly Payment[],
  _today: string,
): Account => {
  throw new Error('not worked out yet');
};
