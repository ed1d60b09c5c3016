import type { FastifyRequest } from 'fastify';
import { addDays, weekOf } from '../../core/calendar.js';
import { ticksOf } from '../../core/done.js';
import { isRead, readDay } from '../../core/reading.js';
import { week } from '../../core/sheets/week.js';
import { preparedOn } from '../../store/coming.js';
import { type EventRow, list } from '../../store/events.js';
import { eventFacts } from '../../store/facts.js';
import { list as listPlaces } from '../../store/places.js';
import { periods } from '../../store/prep-periods.js';
import { marksNow, todayOf } from '../coming.js';
import { type Format, formatFor } from '../format.js';
import { Refused } from '../guards.js';
import { type Answerer, query } from '../house.js';
import { pageOf } from '../links.js';
import { page } from '../page.js';
import { outdatedPapers } from '../printed/outdated.js';
import { type DayEvent, type DayRow, dayRow, said } from './days.js';
import { type Settle, settleFirst } from './settle.js';
import { weekTitle } from './title.js';

export type LaterRow = Pick<DayEvent, 'mark' | 'name' | 'href' | 'guests' | 'state'> & { date: string };

export type WeekPage = {
  number: number;
  days: DayRow[];
  later: LaterRow[];
  evenLater: boolean;
  settle: Settle;
  before: string;
  after: string;
  /** Where today is, from another week. */
  back: boolean;
};

const mostLater = 8;

/** Seven days from today, or from the day asked for: parties, what is to prepare, and what must be settled first. */
export const showWeek: Answerer = async (request, reply) => {
  const { db } = request.server.house;
  const today = todayOf(request);
  const from = fromOf(request, today);
  const to = addDays(from, 6);
  const [listed, after, prepared, ticked, marks] = await Promise.all([
    list(db, { from, to }),
    list(db, { from: addDays(to, 1), most: 40 }),
    preparedOn(db, { from, to }),
    periods(db, { from, to }),
    marksNow(request),
  ]);
  const later = after.filter(isOn);
  if (listed.length + later.length === 0 && (await list(db, { most: 1 })).length === 0)
    return page(reply, 'week/empty', {
      title: 'An empty week',
      nav: 'Week',
      number: weekOf(from),
      kitchenSet: await kitchenSoFar(request),
    });
  const shown = listed.filter(({ archived }) => !archived).map(({ key }) => key);
  const keys = new Set([...shown, ...prepared]);
  const { events, facts } = (await eventFacts(db, [...keys]))!;
  const worked = week(events, from, facts);
  const ticks = ticksOf(ticked);
  const { kitchen } = request;
  const f = formatFor(kitchen);
  const dates = listed.filter(isHeld).map(({ date }) => date);
  return page(reply, 'week/show', {
    title: weekTitle(dates, from, today, f),
    nav: 'Week',
    number: weekOf(from),
    days: worked.days.map((day) => dayRow(day, listed, { kitchen, marks, today, ticks })),
    later: later.slice(0, mostLater).map((row) => laterRow(row, marks, f)),
    evenLater: later.length > mostLater,
    settle: settleFirst(worked, marks, await outdatedPapers(request, events)),
    before: `/?from=${addDays(from, -7)}`,
    after: `/?from=${addDays(from, 7)}`,
    back: from !== today,
  });
};

/** What is entered of the kitchen, "Quince House: 2 people, 1 oven."; nothing while it is as it began. */
const kitchenSoFar = async ({ kitchen, server }: FastifyRequest): Promise<string> => {
  const ovens = (await listPlaces(server.house.db)).find(({ kind }) => kind === 'home')?.ovens ?? 0;
  if (ovens + kitchen.people.length === 0) return '';
  const f = formatFor(kitchen);
  return `${kitchen.name}: ${f.count(kitchen.people.length, 'person', 'people')}, ${f.count(ovens, 'oven')}.`;
};

const fromOf = (request: FastifyRequest, today: string): string => {
  const asked = query(request, 'from');
  if (asked === '') return today;
  const read = readDay(asked, today);
  if (!isRead(read)) throw new Refused(read.sentence, 404);
  return read.value;
};

const isOn = ({ archived, state }: EventRow): boolean =>
  !archived && state !== 'done' && state !== 'cancelled' && state !== 'postponed';

/** Parties that are or were held; a postponed or cancelled one is listed on its day, not counted. */
const isHeld = (row: EventRow): boolean => !row.archived && (row.state === 'done' || isOn(row));

const laterRow = (row: EventRow, marks: Awaited<ReturnType<typeof marksNow>>, f: Format): LaterRow => ({
  mark: marks.get(row.key),
  date: f.date(row.date),
  name: row.name,
  href: pageOf('event', row.key),
  guests: f.count(row.guests, 'guest'),
  state: said[row.state],
});
