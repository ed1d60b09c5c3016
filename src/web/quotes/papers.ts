import type { FastifyReply } from 'fastify';
import { type NumberedPaper, numberedPaper } from '../../core/facts/quote.js';
import { acceptedOf, counting, creditFor, openInvoice } from '../../core/quotes-of-event.js';
import { creditOf, invoiceOf, receiptOf } from '../../core/quoting/papers.js';
import { issuePaper, type PaperMade, readPaper } from '../../store/numbered-papers.js';
import { readPayment } from '../../store/payments.js';
import { todayOf } from '../coming.js';
import { eventOf } from '../events/event.js';
import { Refused } from '../guards.js';
import { type Answerer, param } from '../house.js';
import { goTo } from '../save.js';
import { paperAt } from './addresses.js';

const noQuote = 'No quote of this event is accepted, so there is nothing to put on a paper yet.';

/** Issues an invoice of the accepted quote; where one stands already it leads there. */
export const issueInvoice: Answerer = async (request, reply) => {
  const { event } = await eventOf(request);
  const date = todayOf(request);
  const made = await issuePaper(request.server.house.db, 'invoice', event.key, (ground) => {
    const accepted = acceptedOf(ground.quotes);
    const stands = openInvoice(ground.papers);
    if (stands) return { there: stands };
    if (!accepted) return { sentence: noQuote };
    return { paper: invoiceOf(accepted.doc, counting(ground.payments), { number: ground.number, date }) };
  });
  return leadTo(reply, made);
};

/** Issues the receipt of a payment; where it was issued already it leads there. */
export const issueReceipt: Answerer = async (request, reply) => {
  const { db } = request.server.house;
  const key = param(request, 'key');
  const payment = await readPayment(db, key);
  if (!payment) return reply.callNotFound();
  const date = todayOf(request);
  const made = await issuePaper(db, 'receipt', payment.event, (ground): PaperMade => {
    const stands = ground.papers.find((paper) => paper.payment === key);
    if (stands) return { there: stands };
    const accepted = acceptedOf(ground.quotes);
    const counted = counting(ground.payments);
    const counts = counted.find((one) => one.key === key);
    if (!accepted) return { sentence: noQuote };
    if (!counts || counts.back) return { sentence: 'A receipt is for money that came and counts.' };
    return { paper: receiptOf(accepted.doc, counts, counted, { number: ground.number, date }) };
  });
  return leadTo(reply, made);
};

/** Takes an invoice back by a credit of its own number. */
export const issueCredit: Answerer = async (request, reply) => {
  const invoice = await paperOf(request);
  if (invoice?.kind !== 'invoice') return reply.callNotFound();
  const date = todayOf(request);
  const made = await issuePaper(request.server.house.db, 'credit', invoice.event, ({ papers, number }) => {
    const stands = creditFor(invoice, papers);
    return stands ? { there: stands } : { paper: creditOf(invoice, { number, date }) };
  });
  return leadTo(reply, made);
};

/** The paper that an address names. */
export const paperOf = async (request: Parameters<Answerer>[0]): Promise<NumberedPaper | undefined> => {
  const kind = numberedPaper.shape.kind.safeParse(param(request, 'kind'));
  const number = param(request, 'number');
  if (!kind.success || !/^\d{1,7}$/.test(number)) return undefined;
  return readPaper(request.server.house.db, kind.data, Number(number));
};

const leadTo = (reply: FastifyReply, made: PaperMade) => {
  if ('sentence' in made) throw new Refused(made.sentence, 409);
  return goTo(reply, paperAt('paper' in made ? made.paper : made.there));
};
