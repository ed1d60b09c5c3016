import { addDays } from '../calendar.js';
import type { Event } from '../facts/event.js';
import type { Facts } from '../facts/facts.js';
import { isLive, type PrepDay, prepFor } from '../prep.js';
import type { Problem } from '../problem.js';
import { headCount } from '../requirements.js';
import { firstCourse } from '../service.js';
import { toSettle, workOut } from './settle.js';

export type WeekEvent = {
  event: Event;
  guests: number;
  /** The first service time of its day; undefined without courses. */
  serve: string | undefined;
  stops: number;
};

export type WeekDay = { date: string; events: WeekEvent[]; prep: PrepDay | undefined };

export type Week = {
  days: WeekDay[];
  later: Event[];
  /** What must be settled, worst first, then the nearest event first. */
  settle: { event: Event; problem: Problem }[];
};

/**
 * Seven days from `from`: the events of each day, the jobs due on it, and what must be settled for every event still
 * to come. Quoted and confirmed events are prepared for; enquiries are shown on their day or under later.
 */
export const week = (events: readonly Event[], from: string, facts: Facts): Week => {
  const last = addDays(from, 6);
  const coming = events.filter((event) => endsOn(event) >= from && !isOver(event)).sort(byDate);
  const live = coming.filter(isLive);
  const { value: prep } = prepFor(live, facts, { from, to: last });
  const settle: Week['settle'] = [];
  const stops = new Map<string, number>();
  for (const event of live) {
    const problems = toSettle(workOut(event, facts));
    stops.set(event.key, problems.filter(({ weight }) => weight === 'stop').length);
    settle.push(...problems.map((problem) => ({ event, problem })));
  }
  const rank = { stop: 0, ask: 1, check: 2 };
  settle.sort((a, b) => rank[a.problem.weight] - rank[b.problem.weight] || byDate(a.event, b.event));
  const days = Array.from({ length: 7 }, (_, i) => addDays(from, i)).map((date) => ({
    date,
    events: coming
      .filter((event) => event.date === date)
      .map((event) => ({
        event,
        guests: headCount(event),
        serve: firstCourse(event)?.time,
        stops: stops.get(event.key) ?? 0,
      })),
    prep: prep.find((day) => day.date === date),
  }));
  return { days, later: coming.filter((event) => event.date > last), settle };
};

/** The day of its last course: a party that is served after midnight is not over by then. */
const endsOn = (event: Event): string =>
  event.courses.some((course) => course.dayAfter) ? addDays(event.date, 1) : event.date;

const isOver = (event: Event): boolean =>
  event.archived || ['done', 'cancelled', 'postponed'].includes(event.state);

const byDate = (a: Event, b: Event): number => compare(a.date, b.date) || compare(a.key, b.key);
const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
