import { addDays } from '../../core/calendar.js';
import type { EventState } from '../../core/facts/event.js';
import type { Mark } from '../../core/marks.js';
import { type EventRow, list } from '../../store/events.js';
import { marksNow, todayOf } from '../coming.js';
import { type Format, formatFor } from '../format.js';
import type { Answerer } from '../house.js';
import { query } from '../house.js';
import { pageOf } from '../links.js';
import { page } from '../page.js';
import { stateWords } from './event.js';

export type ListedEvent = {
  href: string;
  name: string;
  weekday: string;
  day: string;
  mark: Mark | undefined;
  guests: string;
  serve: string;
  about: string;
  state: string;
  quiet: boolean;
};
export type EventsPage = {
  gutter: string;
  coming: ListedEvent[];
  past: ListedEvent[];
  archived: ListedEvent[];
  showsArchived: boolean;
  archivedCount: number;
  earlier: string;
};

/** All events: those to come by date, then the past, the last first. Archived ones are asked for. */
export const listEvents: Answerer = async (request, reply) => {
  const today = todayOf(request);
  const all = query(request, 'show') === 'all';
  const showsArchived = query(request, 'show') === 'archived';
  const from = all || showsArchived ? undefined : addDays(today, -366);
  const found = await list(request.server.house.db, { from });
  const marks = await marksNow(request);
  const f = formatFor(request.kitchen);
  const rows = (some: EventRow[]) => some.map((row) => listed(row, marks.get(row.key), today, f));
  const live = found.filter(({ archived }) => !archived);
  const archived = found.filter((row) => row.archived);
  const coming = live.filter(({ date }) => date >= today);
  const past = live.filter(({ date }) => date < today).reverse();
  const title = showsArchived ? 'Archived events' : titleOf(coming.length, f);
  return page(reply, 'events/list', {
    title,
    nav: 'Events',
    gutter: 'events',
    coming: showsArchived ? [] : rows(coming),
    past: showsArchived ? [] : rows(past),
    archived: showsArchived ? rows(archived.reverse()) : [],
    showsArchived,
    archivedCount: archived.length,
    earlier: all || showsArchived ? '' : '/events?show=all',
  });
};

const titleOf = (coming: number, f: Format): string =>
  coming === 0 ? 'Events' : `${f.inWords(coming)} ${coming === 1 ? 'party' : 'parties'} to come`;

const over: readonly EventState[] = ['done', 'cancelled', 'postponed'];

const listed = (row: EventRow, mark: Mark | undefined, today: string, f: Format): ListedEvent => {
  const { key, name, date, state, firstCourse, guests, dishes, place, client } = row;
  const year = date.slice(0, 4) === today.slice(0, 4) ? '' : ` ${date.slice(0, 4)}`;
  return {
    href: pageOf('event', key),
    name,
    weekday: f.dayName(date),
    day: `${f.dayMonth(date)}${year}`,
    mark,
    guests: f.count(guests, 'guest'),
    serve: firstCourse?.time ?? '',
    about: [client, place.name, dishes === 0 ? 'nothing on the menu yet' : f.count(dishes, 'dish', 'dishes')]
      .filter(Boolean)
      .join(', '),
    state: stateWords[state],
    quiet: over.includes(state),
  };
};
