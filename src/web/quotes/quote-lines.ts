import { offerComes } from '../../core/quoting/offer-comes.js';
import { optionTaken } from '../../core/quoting/papers.js';
import { quoteNow } from '../../core/quoting/quote-now.js';
import type { StoredQuote } from '../../store/quotes.js';
import { type Format, formatFor } from '../format.js';
import { quoteAt } from './addresses.js';
import { stateOf } from './states.js';

/** A quote in the list of its event. */
export type QuoteLine = {
  href: string;
  number: number;
  state: ReturnType<typeof quoteNow>;
  said: string;
  guests: string;
  total: string;
};

/** The last first. */
export const quoteLines = (all: readonly StoredQuote[], today: string, f: Format): QuoteLine[] =>
  all.toReversed().map(({ doc }) => {
    const { offer, taken } = doc;
    const sums = taken === null ? offer.options : [optionTaken(doc)];
    const inItsMoney = formatFor({ ...f.ways, currency: offer.currency });
    return {
      href: quoteAt(doc.key).page,
      number: doc.number,
      state: quoteNow(doc, today),
      said: stateOf(doc, today, f),
      guests: f.count(offer.guests, 'guest'),
      total: sums
        .map((option) => {
          const { lines, total } = offerComes(option, offer);
          return lines.length === 0 ? 'no price yet' : inItsMoney.money(total);
        })
        .join(' or '),
    };
  });
