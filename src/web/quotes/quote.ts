import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Offer, Quote } from '../../core/facts/quote.js';
import { readQuote, type StoredQuote } from '../../store/quotes.js';
import { type EventHead, eventOf, headOf, type OneEvent } from '../events/event.js';
import { type Format, formatFor } from '../format.js';
import { Refused } from '../guards.js';
import { param } from '../house.js';
import { page } from '../page.js';
import { quoteAt } from './addresses.js';

/** The quote that an address names, with its event and the event's facts. */
export type OneQuote = StoredQuote & { one: OneEvent };

export const quoteOf = async (request: FastifyRequest): Promise<OneQuote> => {
  const stored = await readQuote(request.server.house.db, param(request, 'key'));
  if (!stored) throw new Refused('There is no quote at this address: it was withdrawn, or never was.', 404);
  return { ...stored, one: await eventOf(request, stored.doc.event) };
};

/** Figures and days of an offer as they were set when it was issued, whatever the kitchen's settings become. */
export const formatOf = (
  { kitchen }: FastifyRequest,
  { basis, offer }: Pick<Quote, 'basis' | 'offer'>,
): Format => formatFor({ ...(basis?.served.kitchen ?? kitchen), currency: offer.currency });

export const formatOfOffer = ({ kitchen }: FastifyRequest, { currency }: Pick<Offer, 'currency'>): Format =>
  formatFor({ ...kitchen, currency });

export type NotNow = { head: EventHead; sentences: string[]; back: string; label: string };

/** Says why nothing was done, with the way back to the quote as it stands. */
export const notNow = async (
  reply: FastifyReply,
  quote: OneQuote,
  sentences: string[],
  status: 409 | 422,
): Promise<unknown> =>
  page(reply.code(status), 'quotes/not-now', {
    title: `Quote ${quote.doc.number}, ${quote.one.event.name}`,
    nav: 'Events',
    head: await headOf(reply.request, quote.one),
    sentences,
    back: quoteAt(quote.doc.key).page,
    label: `Open quote ${quote.doc.number}`,
  });
