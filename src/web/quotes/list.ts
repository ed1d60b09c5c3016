import type { FastifyReply } from 'fastify';
import { acceptedOf, counting, nextNumber, openInvoice } from '../../core/quotes-of-event.js';
import { accountOf } from '../../core/quoting/dues.js';
import { numberedPapers, payments } from '../../store/payments.js';
import { quotes } from '../../store/quotes.js';
import { todayOf } from '../coming.js';
import { addressesOf } from '../events/addresses.js';
import { type EventHead, eventOf, headOf, type OneEvent } from '../events/event.js';
import type { Fault } from '../fields.js';
import type { Form } from '../form.js';
import { formatFor } from '../format.js';
import { type Answerer, query } from '../house.js';
import { page } from '../page.js';
import { quoteAt, quotesAt } from './addresses.js';
import { needOf } from './need.js';
import { type Owed, owedOf } from './owed.js';
import { type PaperLine, paperLines } from './paper-lines.js';
import { type PaymentLine, paymentLines } from './payment-lines.js';
import { type QuoteLine, quoteLines } from './quote-lines.js';

export type QuotesPage = {
  head: EventHead;
  at: ReturnType<typeof addressesOf>;
  list: ReturnType<typeof quotesAt>;
  quotes: QuoteLine[];
  /** Why another quote is needed; empty when none is. */
  need: string;
  /** The last number that is taken, and the next. */
  last: number;
  next: number;
  owed: Owed | undefined;
  payments: PaymentLine[];
  paid: string;
  papers: PaperLine[];
  /** true when there is an accepted quote and no invoice of it stands. */
  invoice: boolean;
  /** A draft that was just withdrawn, to be brought back. */
  withdrawn: string;
  currency: string;
};

/** The quotes of an event, what was paid and is owed, and the papers that were issued. */
export const showQuotes: Answerer = async (request, reply) =>
  drawQuotes(reply, await eventOf(request), { form: { date: '', amount: '', words: '' } });

/** The same with a payment that could not be recorded. */
export const drawQuotes = async (
  reply: FastifyReply,
  one: OneEvent,
  { form, faults = [] }: { form: Form; faults?: readonly Fault[] },
) => {
  const { request } = reply;
  const { db } = request.server.house;
  const { event } = one;
  const today = todayOf(request);
  const f = formatFor(request.kitchen);
  const stored = await quotes(db, [event.key]);
  const all = await payments(db, [event.key]);
  const papers = await numberedPapers(db, [event.key]);
  const accepted = acceptedOf(stored)?.doc;
  const invoice = openInvoice(papers);
  const next = nextNumber(stored);
  const withdrawn = query(request, 'withdrawn');
  return page(reply, 'quotes/list', {
    title: `Quotes, ${event.name}`,
    nav: 'Events',
    form: { ...form, known: String(all.length) },
    faults,
    head: await headOf(request, one),
    at: addressesOf(event.key),
    list: quotesAt(event.key),
    quotes: quoteLines(stored, today, f),
    need: needOf(one, stored),
    last: next - 1,
    next,
    owed: accepted && owedOf(accepted, event, all, { today, ways: f, invoice }),
    payments: paymentLines(all, papers, accepted !== undefined, f),
    paid: f.money(accountOf(0, [], counting(all), today).paid),
    papers: paperLines(papers, all, f),
    invoice: accepted !== undefined && invoice === undefined,
    withdrawn: withdrawn && quoteAt(withdrawn).back,
    currency: request.kitchen.currency,
  });
};
