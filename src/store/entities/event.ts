import type { Selectable } from 'kysely';
import { type Course, type Event, type Served, served } from '../../core/facts/event.js';
import { normalName } from '../../core/names.js';
import type { CourseTable, DishTable, EventTable, GroupTable, GuestTable } from '../tables.js';
import { type Part, placed, type Shape } from './shape.js';

type EventRow = Selectable<EventTable> & {
  guest_group: Selectable<GroupTable>[];
  guest: Selectable<GuestTable>[];
  course: Selectable<CourseTable>[];
  dish: Selectable<DishTable>[];
  event_snapshot: { served: Served }[];
};

const part = { owner: 'event_id', identity: ['key'], order: 'position' };

const groups: Part<Event> = {
  ...part,
  table: 'guest_group',
  rows: (doc) => placed(doc.groups, ({ key, name, guests, portion }) => ({ key, name, guests, portion })),
};

const guests: Part<Event> = {
  ...part,
  table: 'guest',
  rows: (doc) =>
    placed(doc.guests, (guest) => ({
      key: guest.key,
      name: guest.name,
      name_key: normalName(guest.name),
      count: guest.count,
      guest_group: guest.group,
      answered: guest.answered,
      diets: guest.diets,
      avoids: guest.avoids,
      traces: guest.traces,
      seat: guest.table,
      other: guest.other,
    })),
};

const courses: Part<Event> = {
  ...part,
  table: 'course',
  rows: (doc) =>
    placed(doc.courses, ({ key, name, time, dayAfter, service }) => ({
      key,
      name,
      time,
      day_after: dayAfter,
      service,
    })),
};

const dishes: Part<Event> = {
  ...part,
  table: 'dish',
  identity: ['course', 'key'],
  rows: (doc) =>
    doc.courses.flatMap((course) =>
      placed(course.dishes, ({ key, recipe, portion, eaters, service, keptApart, keptFor, price }) => ({
        course: course.key,
        key,
        recipe,
        portion,
        eaters,
        service,
        kept_apart: keptApart,
        kept_for: keptFor,
        price,
      })),
    ),
};

const snapshot: Part<Event> = {
  table: 'event_snapshot',
  owner: 'event_id',
  identity: [],
  order: 'event_id',
  rows: (doc) => (doc.served ? [{ served: doc.served }] : []),
};

export const eventShape: Shape<'event'> = {
  table: 'event',
  row: (doc) => ({
    name: doc.name,
    name_key: normalName(doc.name),
    client: doc.client,
    client_key: normalName(doc.client),
    date: doc.date,
    place: doc.place,
    state: doc.state,
    eats_all: doc.eatsAll,
    over_catering: doc.overCatering,
    costs: doc.costs,
    price: doc.price,
    afterwards: doc.afterwards,
    note: doc.note,
    origin: doc.origin,
  }),
  parts: [groups, guests, courses, dishes, snapshot],
  doc: (row: EventRow) => ({
    key: row.key,
    name: row.name,
    client: row.client,
    date: row.date,
    place: row.place,
    state: row.state,
    groups: row.guest_group.map(({ key, name, guests, portion }) => ({ key, name, guests, portion })),
    guests: row.guest.map((guest) => ({
      key: guest.key,
      name: guest.name,
      count: guest.count,
      group: guest.guest_group,
      answered: guest.answered,
      diets: guest.diets,
      avoids: guest.avoids,
      traces: guest.traces,
      table: guest.seat,
      other: guest.other,
    })),
    eatsAll: row.eats_all,
    overCatering: row.over_catering,
    courses: row.course.map((course) => courseOf(course, row.dish)),
    costs: row.costs,
    price: row.price,
    afterwards: row.afterwards,
    note: row.note,
    served: servedOf(row.event_snapshot[0]),
    archived: row.archived_at !== null,
    origin: row.origin,
  }),
};

// Kept by an earlier program, it may lack what facts hold today.
const servedOf = (row: { served: Served } | undefined): Served | null =>
  row ? served.parse(row.served) : null;

const courseOf = (row: Selectable<CourseTable>, dishes: Selectable<DishTable>[]): Course => ({
  key: row.key,
  name: row.name,
  time: row.time,
  dayAfter: row.day_after,
  service: row.service,
  dishes: dishes
    .filter(({ course }) => course === row.key)
    .map(({ key, recipe, portion, eaters, service, kept_apart, kept_for, price }) => ({
      key,
      recipe,
      portion,
      eaters,
      service,
      keptApart: kept_apart,
      keptFor: kept_for,
      price,
    })),
});
