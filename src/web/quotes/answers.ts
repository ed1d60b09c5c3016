import type { FastifyReply } from 'fastify';
import { isRead } from '../../core/reading.js';
import { readPastDay } from '../../core/reading-days.js';
import { accept, decline, issue, takeAnswerBack } from '../../store/quote-answers.js';
import { bringBack, type QuoteSaved, withdraw } from '../../store/quote-drafts.js';
import { todayOf } from '../coming.js';
import type { Fault } from '../fields.js';
import { type Form, text } from '../form.js';
import { type Answerer, param } from '../house.js';
import { goTo, saving } from '../save.js';
import { quoteAt, quotesAt } from './addresses.js';
import { notNow, type OneQuote, quoteOf } from './quote.js';
import { drawQuote } from './show.js';

const revisionIn = (form: Form): number => Number(text(form, 'revision'));

/** Issues a draft as it stands. */
export const issueQuote: Answerer = async (request, reply) => {
  const quote = await quoteOf(request);
  const step = { today: todayOf(request), revision: revisionIn(request.body as Form), ...saving(reply) };
  return done(reply, quote, await issue(request.server.house.db, quote.doc.key, step));
};

/** Notes that the client accepted, which menu and on which day. */
export const acceptQuote: Answerer = async (request, reply) => {
  const quote = await quoteOf(request);
  const form = request.body as Form;
  const { options } = quote.doc.offer;
  const taken = options.length === 1 ? options[0] : options.find(({ key }) => key === text(form, 'taken'));
  const faults: Fault[] = [];
  if (!taken)
    faults.push({ field: 'taken', label: 'Which menu', sentence: 'Choose the menu that was accepted.' });
  const day = dayOf(quote, form, 'accepted', todayOf(request), faults);
  if (!taken || faults.length > 0) return drawQuote(reply.code(422), quote, { form, faults });
  const step = { taken: taken.key, day, revision: revisionIn(form), ...saving(reply) };
  return done(reply, quote, await accept(request.server.house.db, quote.doc.key, step));
};

/** Notes that the client declined, and on which day. */
export const declineQuote: Answerer = async (request, reply) => {
  const quote = await quoteOf(request);
  const form = request.body as Form;
  const faults: Fault[] = [];
  const day = dayOf(quote, form, 'declined', todayOf(request), faults);
  if (faults.length > 0) return drawQuote(reply.code(422), quote, { form, faults });
  const step = { day, revision: revisionIn(form), ...saving(reply) };
  return done(reply, quote, await decline(request.server.house.db, quote.doc.key, step));
};

/** The day of an answer: today unless another is typed, never before the quote was issued. */
const dayOf = ({ doc }: OneQuote, form: Form, what: string, today: string, faults: Fault[]): string => {
  const typed = text(form, 'day').trim();
  if (typed === '') return today;
  const read = readPastDay(typed, today);
  const sentence = !isRead(read)
    ? read.sentence
    : doc.issued !== null && read.value < doc.issued
      ? `It was issued after that day, so it cannot have been ${what} then.`
      : '';
  if (sentence !== '') faults.push({ field: 'day', label: 'On which day', sentence });
  return isRead(read) ? read.value : today;
};

/** Takes back an answer that was noted by mistake. */
export const openAgain: Answerer = async (request, reply) => {
  const quote = await quoteOf(request);
  const step = { revision: revisionIn(request.body as Form), ...saving(reply) };
  return done(reply, quote, await takeAnswerBack(request.server.house.db, quote.doc.key, step));
};

/** Takes a draft off the list; the page it leads to can bring it back. */
export const withdrawDraft: Answerer = async (request, reply) => {
  const quote = await quoteOf(request);
  const step = { revision: revisionIn(request.body as Form), ...saving(reply) };
  const { key, event } = quote.doc;
  const saved = await withdraw(request.server.house.db, key, step);
  if (saved.outcome === 'saved')
    return goTo(reply, `${quotesAt(event).page}?withdrawn=${encodeURIComponent(key)}`);
  return done(reply, quote, saved);
};

/** Brings a withdrawn draft back. */
export const bringDraftBack: Answerer = async (request, reply) => {
  const key = param(request, 'key');
  const saved = await bringBack(request.server.house.db, key, saving(reply));
  return saved.outcome === 'saved' ? goTo(reply, quoteAt(key).page) : reply.callNotFound();
};

const done = (reply: FastifyReply, quote: OneQuote, saved: QuoteSaved) => {
  switch (saved.outcome) {
    case 'saved':
      return goTo(reply, quoteAt(quote.doc.key).page);
    case 'stale':
      return notNow(
        reply,
        quote,
        ['It changed since this page was opened, so nothing was done. Look at it again.'],
        409,
      );
    case 'refused':
      return notNow(reply, quote, saved.sentences, 422);
    case 'gone':
      return reply.callNotFound();
  }
};
