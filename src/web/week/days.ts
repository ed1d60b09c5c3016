import { doneOf, jobsDone, type Ticks } from '../../core/done.js';
import type { Kitchen } from '../../core/facts/kitchen.js';
import type { Mark } from '../../core/marks.js';
import type { PrepDay } from '../../core/prep.js';
import { type Shown, showQuantity } from '../../core/quantity/show.js';
import type { WeekDay } from '../../core/sheets/week.js';
import type { EventRow } from '../../store/events.js';
import { formatFor } from '../format.js';
import { pageOf } from '../links.js';
import { sumOf } from '../prep/jobs.js';

export type DayEvent = {
  mark: Mark | undefined;
  name: string;
  href: string;
  guests: string;
  serve: string;
  /** Said of an event that is not confirmed, or is over. */
  state: string;
  stops: string;
};

export type DueJob = {
  quantity: Shown | undefined;
  recipe: string;
  useBy: string;
  marks: { mark: Mark | undefined; name: string }[];
};

export type DayRow = {
  date: string;
  weekday: string;
  number: string;
  today: boolean;
  events: DayEvent[];
  prep: string;
  /** "3 of 10 done", nothing while none is. */
  done: string;
  due: DueJob[];
  moreDue: string;
};

type Given = { kitchen: Kitchen; marks: ReadonlyMap<string, Mark>; today: string; ticks: Ticks };

/** A day of the week page: its parties, also those that are over, and what is to prepare on it. */
export const dayRow = (
  { date, events, prep }: WeekDay,
  listed: readonly EventRow[],
  { kitchen, marks, today, ticks }: Given,
): DayRow => {
  const f = formatFor(kitchen);
  const worked = new Map(events.map((one) => [one.event.key, one]));
  const done = prep ? jobsDone([prep], ticks) : 0;
  const isToday = date === today;
  const due = prep && isToday ? dueJobs(prep, { kitchen, marks, ticks }) : [];
  return {
    date,
    weekday: f.dayName(date),
    number: String(Number(date.slice(8))),
    today: isToday,
    events: listed
      .filter((row) => row.date === date && !row.archived)
      .map((row) => {
        const stops = worked.get(row.key)?.stops ?? 0;
        return {
          mark: marks.get(row.key),
          name: row.name,
          href: pageOf('event', row.key),
          guests: f.count(row.guests, 'guest'),
          serve: worked.get(row.key)?.serve ?? '',
          state: said[row.state],
          stops: stops > 0 ? f.count(stops, 'stop') : '',
        };
      }),
    prep: prep ? sumOf(prep.jobs, prep, f, '').replace(/ jobs?/, (jobs) => `${jobs} to prep`) : '',
    done: done > 0 ? `${f.number(done)} of ${f.number(prep!.jobs)} done` : '',
    due: due.slice(0, mostDue),
    moreDue: due.length > mostDue ? f.count(due.length - mostDue, 'more thing', 'more things') : '',
  };
};

export const said: Record<EventRow['state'], string> = {
  enquiry: 'Enquiry only',
  quoted: 'Quoted, not confirmed',
  confirmed: '',
  done: 'Done',
  postponed: 'Postponed',
  cancelled: 'Cancelled',
};

const mostDue = 6;

/** What is still to make on a day, each recipe once. */
const dueJobs = (prep: PrepDay, { kitchen, marks, ticks }: Omit<Given, 'today'>): DueJob[] => {
  const f = formatFor(kitchen);
  const all = prep.stations
    .flatMap(({ jobs }) => jobs)
    .filter((job) => doneOf(job, ticks).state !== 'done')
    .sort((a, b) => b.depth - a.depth);
  const recipes = new Map(all.map((job) => [job.recipe.key, job]));
  return [...recipes.values()].map(({ makes, recipe, useBy, shares }) => ({
    quantity: makes && showQuantity(makes, kitchen, 'prep'),
    recipe: recipe.name,
    useBy: useBy === undefined ? '' : f.date(useBy),
    marks: shares.map(({ event }) => ({ mark: marks.get(event.key), name: event.name })),
  }));
};
