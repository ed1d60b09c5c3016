import type { FastifyRequest } from 'fastify';
import { jobsDone, type Ticks } from '../../core/done.js';
import type { Event } from '../../core/facts/event.js';
import type { Mark } from '../../core/marks.js';
import type { PrepDay } from '../../core/prep.js';
import { periodOn } from '../../core/prep-period.js';
import { headCount } from '../../core/requirements.js';
import { type PrepList, prepListSheet } from '../../core/sheets/prep-list.js';
import { marksNow, printedNow } from '../coming.js';
import { type Format, formatFor } from '../format.js';
import { type Html, html } from '../html.js';
import { mark } from '../marks.js';
import { withMend } from '../mends.js';
import { type JobDay, jobDay } from './jobs.js';
import type { Listed } from './list.js';
import type { ListOf } from './ticks.js';

/** Who the figures are for: an event with its letter, its day and its guests. */
export type FiguresFor = {
  key: string;
  name: string;
  mark: Mark | undefined;
  day: string;
  weekday: string;
  guests: string;
  /** Joined since the list of these days was begun. */
  joined: boolean;
};

/** How many jobs are done: "3 of 10 done". */
export type Tally = { done: number; words: string };

/** What the prep list of a day and that of an event have in common. */
export type PrepSheet = {
  days: JobDay[];
  of: ListOf;
  tally: Tally;
  figuresFor: FiguresFor[];
  problems: ReturnType<typeof withMend>[];
  foot: string[];
  /** Where the home kitchen keeps things cold, to write temperatures beside. */
  cold: string[];
  heat: 'C' | 'F';
  paper: { left: string; middle: string; right: Html; foot: string };
};

/** A prep list as its page and its paper show it. */
export const prepSheet = async (
  request: FastifyRequest,
  { answer, periods }: Listed,
  of: ListOf,
): Promise<PrepSheet> => {
  const { days, facts, ticks } = answer.value;
  const { kitchen } = facts;
  const f = formatFor(kitchen);
  const marks = await marksNow(request);
  const begun = of.page === 'day' && days[0] ? periodOn(days[0].date, periods) : undefined;
  const figuresFor = withJobs(answer.value).map((event) => ({
    key: event.key,
    name: event.name,
    mark: marks.get(event.key),
    day: f.date(event.date),
    weekday: f.dayName(event.date),
    guests: f.number(headCount(event)),
    joined: begun?.events.includes(event.key) === false,
  }));
  return {
    days: days.map((day) => jobDay(day, facts, marks, ticks)),
    of,
    tally: tallyOf(days, ticks, f),
    figuresFor,
    problems: answer.problems.map(withMend),
    foot: prepListSheet(answer).foot,
    cold: coldPlaces(facts.places),
    heat: kitchen.heat,
    paper: {
      left: kitchen.name,
      middle: '',
      right: html`${figuresFor.map((one) => html`<span class="for-event">${mark(one.mark)} ${one.name} ${one.weekday}</span>`)}`,
      foot: `${printedNow(request)} Void when guests, a menu or a recipe change.`,
    },
  };
};

export const tallyOf = (days: readonly PrepDay[], ticks: Ticks, f: Format): Tally => {
  const done = jobsDone(days, ticks);
  const jobs = days.reduce((n, day) => n + day.jobs, 0);
  return { done, words: `${f.number(done)} of ${f.number(jobs)} done` };
};

/** The events that have jobs on the days shown. */
const withJobs = ({ events, days }: PrepList): Event[] => {
  const shares = days.flatMap(({ stations }) =>
    stations.flatMap(({ jobs }) => jobs.flatMap((job) => job.shares)),
  );
  const keys = new Set(shares.map(({ event }) => event.key));
  return events.filter(({ key }) => keys.has(key));
};

const coldPlaces = (places: PrepList['facts']['places']): string[] => {
  const home = [...places.values()].find(({ kind }) => kind === 'home');
  return [home && home.fridgeShelves > 0 && 'Fridge', home && home.freezerShelves > 0 && 'Freezer'].filter(
    (one): one is string => typeof one === 'string',
  );
};
