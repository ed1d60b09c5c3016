import type { FastifyReply } from 'fastify';
import type { QuoteState } from '../../core/facts/quote.js';
import { nextNumber } from '../../core/quotes-of-event.js';
import { quoteNow } from '../../core/quoting/quote-now.js';
import { whatChanged } from '../../core/quoting/what-changed.js';
import { quoteSheet } from '../../core/sheets/quote-sheet.js';
import { payments } from '../../store/payments.js';
import { quotes } from '../../store/quotes.js';
import { answerSheet } from '../answer.js';
import { todayOf } from '../coming.js';
import { addressesOf } from '../events/addresses.js';
import { type EventHead, headOf } from '../events/event.js';
import type { Choice, Fault } from '../fields.js';
import type { Form } from '../form.js';
import type { Answerer } from '../house.js';
import { quoteAt, quotesAt } from './addresses.js';
import { type Beside, besideOf } from './beside.js';
import { type QuotePaper, quotePaper } from './paper.js';
import { formatOf, type OneQuote, quoteOf } from './quote.js';
import { stateOf } from './states.js';

export type QuotePage = {
  head: EventHead;
  at: ReturnType<typeof quoteAt>;
  event: ReturnType<typeof addressesOf>;
  list: ReturnType<typeof quotesAt>;
  number: number;
  revision: number;
  state: QuoteState | 'expired';
  /** How far it has come, in words. */
  said: string;
  paper: QuotePaper;
  beside: Beside;
  /** The menus to choose from, where there are several. */
  choices: Choice[];
  /** The last number that is taken among the event's quotes, and the next. */
  last: number;
  next: number;
};

/** A quote as the client has it, which prints; for the kitchen what it costs today stands beside it. */
export const showQuote: Answerer = async (request, reply) => drawQuote(reply, await quoteOf(request));

/** The same with an answer that could not be read. */
export const drawQuote = async (
  reply: FastifyReply,
  quote: OneQuote,
  { form = {}, faults = [] }: { form?: Form; faults?: readonly Fault[] } = {},
) => {
  const { request } = reply;
  const { doc, revision, one } = quote;
  const { db } = request.server.house;
  const today = todayOf(request);
  const f = formatOf(request, doc);
  const next = nextNumber(await quotes(db, [doc.event]));
  const { options } = doc.offer;
  return answerSheet(reply, quoteSheet(doc, today), 'quotes/show', {
    title: `Quote ${doc.number}, ${doc.offer.title}`,
    nav: 'Events',
    form: { day: '', taken: '', ...form, revision: String(revision) },
    faults,
    head: await headOf(request, one),
    at: quoteAt(doc.key),
    event: addressesOf(doc.event),
    list: quotesAt(doc.event),
    number: doc.number,
    revision,
    state: quoteNow(doc, today),
    said: stateOf(doc, today, f),
    paper: quotePaper(doc, f, {
      payments: await payments(db, [doc.event]),
      today,
      on: request.kitchen.paper,
    }),
    beside: besideOf(whatChanged(doc, one.event, one.facts, next), doc, f),
    choices: options.length > 1 ? options.map(({ key, name }) => ({ value: key, label: name })) : [],
    last: next - 1,
    next,
  });
};
