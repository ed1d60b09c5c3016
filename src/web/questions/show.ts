import { isRead, readDay } from '../../core/reading.js';
import { type Questions, questionsFor } from '../../core/sheets/questions.js';
import { todayOf } from '../coming.js';
import { addressesOf } from '../events/addresses.js';
import { type EventHead, eventOf, headOf } from '../events/event.js';
import type { Fault } from '../fields.js';
import { formatFor } from '../format.js';
import { type Answerer, query } from '../house.js';
import { page } from '../page.js';

export type QuestionsPage = {
  head: EventHead;
  at: ReturnType<typeof addressesOf>;
  kitchen: string;
  event: string;
  day: string;
  /** When it is wanted back; empty to be written in by hand. */
  by: string;
  questions: Questions;
  /** Lines to name guests on. */
  lines: number;
};

const roomForLines = 8;

/** What the client is asked about what their guests eat, on one page to send; nothing of what is known already. */
export const showQuestions: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  const { event } = one;
  const f = formatFor(request.kitchen);
  const typed = query(request, 'by');
  const read = typed.trim() === '' ? undefined : readDay(typed, todayOf(request));
  const faults: Fault[] = [];
  if (read && !isRead(read)) faults.push({ field: 'by', label: 'Back by', sentence: read.sentence });
  else if (read && read.value > event.date)
    faults.push({
      field: 'by',
      label: 'Back by',
      sentence: `${f.date(read.value)} is after the party on ${f.date(event.date)}. Enter a day before it.`,
    });
  if (faults.length > 0) reply.code(422);
  return page(reply, 'questions/show', {
    title: `Questions about what guests eat, ${event.name}`,
    nav: 'Events',
    form: { by: typed },
    faults,
    head: await headOf(request, one),
    at: addressesOf(event.key),
    kitchen: request.kitchen.name,
    event: event.name,
    day: f.dateYear(event.date),
    by: read && isRead(read) && faults.length === 0 ? f.dateYear(read.value) : '',
    questions: questionsFor(request.kitchen),
    lines: roomForLines,
  });
};
