import type { FastifyRequest } from 'fastify';
import { addDays } from '../../core/calendar.js';
import { prepList, prepListSheet } from '../../core/sheets/prep-list.js';
import { answerSheet } from '../answer.js';
import { todayOf } from '../coming.js';
import { formatFor } from '../format.js';
import { type Answerer, query } from '../house.js';
import { sumOf } from './jobs.js';
import { dayAsked, dayList, factsOn, type Listed } from './list.js';
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
  const [date, listed] = asked === '' ? await firstDay(request, only) : await onDay(request, asked, only);
  const { answer } = listed;
  const sheet = await prepSheet(request, listed, { page: 'day', event: only });
  const f = formatFor(request.kitchen);
  return answerSheet(reply, prepListSheet(answer), 'prep/show', {
    title: `Prep for ${f.weekday(date)}`,
    nav: 'Prep',
    ...sheet,
    date,
    before: linkTo(addDays(date, -1), only),
    after: linkTo(addDays(date, 1), only),
    next: sheet.days.length === 0 ? await nextDay(request, date, only) : undefined,
    only: only === '' ? '' : (answer.value.events[0]?.name ?? 'one event'),
    all: linkTo(date, ''),
    csv: linkTo(date, only, '.csv'),
    json: linkTo(date, only, '.json'),
  });
};

const onDay = async (request: FastifyRequest, asked: string, only: string): Promise<[string, Listed]> => {
  const date = dayAsked(request, asked);
  return [date, await dayList(request, date, only)];
};

/** Today, or the next day with jobs where today has none. */
const firstDay = async (request: FastifyRequest, only: string): Promise<[string, Listed]> => {
  const today = todayOf(request);
  const listed = await dayList(request, today, only);
  if (listed.answer.value.days.length > 0) return [today, listed];
  const next = (await daysFrom(request, today, only))[0];
  return next ? [next.date, await dayList(request, next.date, only)] : [today, listed];
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

/** The address of a day's list. */
export const linkTo = (date: string, only: string, ending = ''): string =>
  `/prep${ending}?date=${date}${only && `&event=${encodeURIComponent(only)}`}`;
