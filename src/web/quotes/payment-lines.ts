import type { NumberedPaper, Payment } from '../../core/facts/quote.js';
import type { Format } from '../format.js';
import { paperAt } from './addresses.js';

/** Money that came or went back, as the list shows it. */
export type PaymentLine = {
  key: string;
  date: string;
  amount: string;
  words: string;
  back: boolean;
  /** Since when it is struck out; empty while it counts. */
  struck: string;
  receipt: { href: string; number: number } | undefined;
  /** true when a receipt of it can be issued. */
  toReceipt: boolean;
};

export const paymentLines = (
  all: readonly Payment[],
  papers: readonly NumberedPaper[],
  accepted: boolean,
  f: Format,
): PaymentLine[] =>
  all.map(({ key, date, amount, back, words, struck }) => {
    const receipt = papers.find(({ payment }) => payment === key);
    return {
      key,
      date: f.dateYear(date),
      amount: f.money(back ? -amount : amount),
      words: words || (back ? 'given back' : 'received'),
      back,
      struck: struck === null ? '' : f.dateYear(struck),
      receipt: receipt && { href: paperAt(receipt), number: receipt.number },
      toReceipt: accepted && !receipt && !back && struck === null,
    };
  });
