import type { FastifyRequest } from 'fastify';
import { addDays } from '../../core/calendar.js';
import { isRead, readDay } from '../../core/reading.js';
import { prepList, prepListSheet } from '../../core/sheets/prep-list.js';
import { preparedOn } from '../../store/coming.js';
import { eventFacts } from '../../store/facts.js';
import { answerSheet } from '../answer.js';
import { todayOf } from '../coming.js';
import { formatFor } from '../format.js';
import { Refused } from '../guards.js';
import { type Answerer, query } from '../house.js';
import { sumOf } from './jobs.js';
import { type PrepSheet, prepSheet } from './sheet.js';

export type DayLink = { href: string; words: string };

export type PrepPage = PrepSheet & {
  date: string;
  before: string;
  after: string;
  /** The next day that has jobs, where this one has none. */
  next: DayLink | undefined;
  /** The one event whose jobs alone are shown. */
  only: string;
  all: string;
  csv: string;
  json: string;
};

/** How far to look for the next day with jobs, from a day that has none. */
const lookAhead = 42;

/** The prep list of a day for every quoted and confirmed event: on the page, on paper, as CSV and JSON. */
export const showPrep: Answerer = async (request, reply) => {
  const asked = query(request, 'date');
  const only = query(request, 'event');
  const { date, events, answer } =
    asked === '' ? await firstDay(request, only) : await onDay(request, dayAsked(request, asked), only);
  const sheet = await prepSheet(request, answer);
  const f = formatFor(request.kitchen);
  return answerSheet(reply, prepListSheet(answer), 'prep/show', {
    title: `Prep for ${f.weekday(date)}`,
    nav: 'Prep',
    ...sheet,
    date,
    before: linkTo(addDays(date, -1), only),
    after: linkTo(addDays(date, 1), only),
    next: sheet.days.length === 0 ? await nextDay(request, date, only) : undefined,
    only: only === '' ? '' : (events[0]?.name ?? 'one event'),
    all: linkTo(date, ''),
    csv: linkTo(date, only, '.csv'),
    json: linkTo(date, only, '.json'),
  });
};

const dayAsked = (request: FastifyRequest, asked: string): string => {
  const read = readDay(asked, todayOf(request));
  if (!isRead(read)) throw new Refused(read.sentence, 404);
  return read.value;
};

const factsOn = async (request: FastifyRequest, from: string, to: string, only: string) => {
  const { db } = request.server.house;
  const keys = (await preparedOn(db, { from, to })).filter((key) => only === '' || key === only);
  return (await eventFacts(db, keys))!;
};

const onDay = async (request: FastifyRequest, date: string, only: string) => {
  const { events, facts } = await factsOn(request, date, date, only);
  return { date, events, answer: prepList(events, facts, date) };
};

/** Today, or the next day with jobs where today has none. */
const firstDay = async (request: FastifyRequest, only: string) => {
  const today = await onDay(request, todayOf(request), only);
  if (today.answer.value.days.length > 0) return today;
  const next = (await daysFrom(request, today.date, only))[0];
  return next ? onDay(request, next.date, only) : today;
};

const nextDay = async (request: FastifyRequest, date: string, only: string): Promise<DayLink | undefined> => {
  const day = (await daysFrom(request, date, only))[0];
  const f = formatFor(request.kitchen);
  return (
    day && { href: linkTo(day.date, only), words: `${f.longDate(day.date)}: ${sumOf(day.jobs, day, f)}` }
  );
};

const daysFrom = async (request: FastifyRequest, date: string, only: string) => {
  const { events, facts } = await factsOn(request, date, addDays(date, lookAhead), only);
  return prepList(events, facts).value.days.filter((day) => day.date >= date);
};

const linkTo = (date: string, only: string, ending = ''): string =>
  `/prep${ending}?date=${date}${only && `&event=${encodeURIComponent(only)}`}`;
