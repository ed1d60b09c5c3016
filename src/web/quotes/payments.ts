import type { FastifyReply } from 'fastify';
import { isRead, readMoney } from '../../core/reading.js';
import { readPastDay } from '../../core/reading-days.js';
import { recordPayment, strikePayment } from '../../store/payment-saves.js';
import { todayOf } from '../coming.js';
import { eventOf } from '../events/event.js';
import { Reading } from '../faults.js';
import { type Form, text } from '../form.js';
import { type Answerer, param } from '../house.js';
import { goTo, saving } from '../save.js';
import { quotesAt } from './addresses.js';
import { drawQuotes } from './list.js';

/** Records money that came or went back. */
export const takePayment: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  const form = request.body as Form;
  const reading = new Reading(form);
  const made = readPayment(reading, request.kitchen.currency, todayOf(request));
  const { faults } = reading;
  if (faults.length > 0) return drawQuotes(reply.code(422), one, { form, faults });
  const { db } = request.server.house;
  const known = Number(text(form, 'known'));
  const saved = await recordPayment(db, { ...made, event: one.event.key }, { known, ...saving(reply) });
  if (saved.outcome === 'saved') return goTo(reply, `${quotesAt(one.event.key).page}#payments`);
  const sentence =
    'Another payment was recorded since this page was opened. If this is not that one, record it again.';
  return drawQuotes(reply.code(409), one, { form, faults: [{ field: 'amount', label: 'Amount', sentence }] });
};

const readPayment = (reading: Reading, currency: string, today: string) => {
  const date = reading.text('date') === '' ? today : null;
  const words = reading.text('words');
  if (words.length > 200) reading.refuse('words', 'How and what for', 'This takes at most 200 letters.');
  return {
    date: date ?? reading.take('date', 'Day', (typed) => readPastDay(typed, today), today),
    amount: reading.take('amount', 'Amount', (typed) => aboveZero(typed, currency), 1),
    back: reading.text('back') === 'back',
    words,
  };
};

const aboveZero = (typed: string, currency: string) => {
  const read = readMoney(typed, currency);
  if (isRead(read) && read.value === 0) return { sentence: 'Enter an amount above zero.' };
  return read;
};

/** Strikes a payment out as entered by mistake, or lets it count again. */
export const strike: Answerer = async (request, reply) => {
  const day = text(request.body as Form, 'counts') === 'yes' ? null : todayOf(request);
  return after(reply, await strikePayment(request.server.house.db, param(request, 'key'), day));
};

const after = (reply: FastifyReply, saved: Awaited<ReturnType<typeof strikePayment>>) =>
  saved.outcome === 'saved'
    ? goTo(reply, `${quotesAt(saved.payment.event).page}#payments`)
    : reply.callNotFound();
