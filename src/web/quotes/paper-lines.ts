import type { NumberedPaper, Payment } from '../../core/facts/quote.js';
import { creditFor } from '../../core/quotes-of-event.js';
import type { Format } from '../format.js';
import { paperAt } from './addresses.js';

/** A numbered paper in the list of its event. */
export type PaperLine = {
  href: string;
  name: string;
  date: string;
  total: string;
  /** Why it no longer stands; empty while it does. */
  gone: string;
  /** Where it can be taken back by a credit; empty for what is no invoice, or was taken back. */
  credit: string;
};

export const kinds = { invoice: 'Invoice', receipt: 'Receipt', credit: 'Credit' } as const;

export const paperLines = (
  papers: readonly NumberedPaper[],
  payments: readonly Payment[],
  f: Format,
): PaperLine[] =>
  papers.map((paper) => {
    const gone = whyGone(paper, papers, payments);
    return {
      href: paperAt(paper),
      name: `${kinds[paper.kind]} ${paper.number}`,
      date: f.dateYear(paper.date),
      total: f.money(paper.kind === 'credit' ? -paper.total : paper.total),
      gone,
      credit: paper.kind === 'invoice' && gone === '' ? `${paperAt(paper)}/credit` : '',
    };
  });

/** Why a paper no longer stands: a credit took an invoice back, or the payment of a receipt was a mistake. */
export const whyGone = (
  paper: NumberedPaper,
  papers: readonly NumberedPaper[],
  payments: readonly Payment[],
): string => {
  const credit = creditFor(paper, papers);
  if (credit) return `taken back by credit ${credit.number}`;
  const payment = payments.find(({ key }) => key === paper.payment);
  return payment && payment.struck !== null ? 'void: its payment was entered by mistake' : '';
};
