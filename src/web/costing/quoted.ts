import type { FastifyRequest } from 'fastify';
import { optionTaken } from '../../core/quoting/papers.js';
import { whatChanged } from '../../core/quoting/what-changed.js';
import { acceptedQuote } from '../../store/quotes.js';
import type { OneEvent } from '../events/event.js';
import { formatFor } from '../format.js';
import { quoteAt } from '../quotes/addresses.js';

/** What a client has accepted, beside the price as it is set now. */
export type Quoted = {
  /** "Quote 2, accepted Mon 28 Sep at £26.00 a guest". */
  words: string;
  href: string;
  /** "30.4%"; nothing where it is not known. */
  margin: string;
  /** What a new price would take. */
  holds: string;
};

/** The accepted quote of an event; undefined while there is none. */
export const quotedFor = async (
  request: FastifyRequest,
  { event, facts }: OneEvent,
): Promise<Quoted | undefined> => {
  const { accepted, last } = await acceptedQuote(request.server.house.db, event.key);
  if (!accepted) return undefined;
  const f = formatFor(request.kitchen);
  const { doc } = accepted;
  const { lines } = optionTaken(doc);
  const margin = whatChanged(doc, event, facts).then?.margin;
  const full = lines[0] && lines[0].count > 1 ? ` at ${f.money(lines[0].each)} a guest` : '';
  const on = doc.answered ? ` ${f.date(doc.answered)}` : '';
  return {
    words: `Quote ${doc.number}, accepted${on}${full}`,
    href: quoteAt(doc.key).page,
    margin: margin ? f.percent(margin) : '',
    holds: `It is accepted, so its price holds. A new price takes quote ${last + 1}, which ${doc.offer.client || 'the client'} must accept.`,
  };
};
