import type { FastifyRequest } from 'fastify';
import { acceptedOf, nextNumber } from '../../core/quotes-of-event.js';
import { whatChanged } from '../../core/quoting/what-changed.js';
import { acceptedQuote, type StoredQuote } from '../../store/quotes.js';
import type { OneEvent } from '../events/event.js';
import { quotesAt } from './addresses.js';

/** Another quote that is needed: why, its number and the last one's, and where it is drafted. */
export type QuoteNeed = { sentence: string; next: number; after: number; href: string };

/** What the accepted quote no longer holds for, with the number of the next; undefined while it holds. */
export const quoteNeed = async (request: FastifyRequest, one: OneEvent): Promise<QuoteNeed | undefined> => {
  const { accepted, last } = await acceptedQuote(request.server.house.db, one.event.key);
  const next = nextNumber([{ doc: { number: last } }]);
  const sentence = accepted ? whyAnother(one, accepted, next) : '';
  return sentence === '' ? undefined : { sentence, next, after: last, href: quotesAt(one.event.key).page };
};

/** The same for an event whose quotes are known, as a sentence; empty when none is needed. */
export const needOf = (one: OneEvent, all: readonly StoredQuote[]): string => {
  const accepted = acceptedOf(all);
  return accepted ? whyAnother(one, accepted, nextNumber(all)) : '';
};

const whyAnother = ({ event, facts }: OneEvent, accepted: StoredQuote, next: number): string => {
  if (event.state === 'done' || event.state === 'cancelled') return '';
  const { needsQuote, sentences } = whatChanged(accepted.doc, event, facts, next);
  return needsQuote ? (sentences[0] ?? '') : '';
};
