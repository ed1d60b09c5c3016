import type { FastifyReply, FastifyRequest } from 'fastify';
import { addDays } from '../../core/calendar.js';
import { isRead, readClock } from '../../core/reading.js';
import { read } from '../../store/documents.js';
import { list } from '../../store/events.js';
import { list as listPlaces } from '../../store/places.js';
import { todayOf } from '../coming.js';
import { Reading } from '../faults.js';
import type { Choice, Fault } from '../fields.js';
import { type Form, text } from '../form.js';
import { formatFor } from '../format.js';
import { type Answerer, query } from '../house.js';
import type { Html } from '../html.js';
import { keyFrom } from '../keys.js';
import { placesInOrder } from '../listing.js';
import { fragment, page, wantsPart } from '../page.js';
import { add } from '../save.js';
import { sayDay, typedDay } from './day.js';
import { readNewEvent } from './new-form.js';

export type NewEventPage = {
  places: Choice[];
  menus: Choice[];
  day: Html;
  time: string;
  menu: string;
};

/** Asks who, when and how many. */
export const askForEvent: Answerer = async (request, reply) => {
  const places = await listPlaces(request.server.house.db);
  const home = places.find(({ kind }) => kind === 'home') ?? places[0];
  return draw(reply, {
    place: home?.key ?? '',
    state: 'enquiry',
    menu: query(request, 'menu'),
    date: query(request, 'date'),
  });
};

/** Says below the form how the day and the time are read and what the copied menu holds. Nothing is saved. */
export const readEvent: Answerer = async (request, reply) =>
  fragment(reply, 'events/new-update', await modelOf(request, request.body as Form));

/** Adds the event, or takes a day that was guessed. */
export const addEvent: Answerer = async (request, reply) => {
  const form = request.body as Form;
  const { db } = request.server.house;
  const today = todayOf(request);
  const guess = /^day:(\d{4}-\d\d-\d\d)$/.exec(text(form, 'do'))?.[1];
  const f = formatFor(request.kitchen);
  if (guess) form.date = typedDay(guess);
  const from = text(form, 'menu') ? (await read(db, 'event', text(form, 'menu')))?.doc : undefined;
  const reading = new Reading(form);
  const made = readNewEvent(reading, { today, f, from, kitchen: request.kitchen });
  const redraw = (faults: readonly Fault[]) => draw(reply, form, faults);
  if (guess) return redraw(reading.faults);
  const doc = { ...made, key: await freeKey(request, made.name) };
  return add(reply, { entity: 'event', form, faults: reading.faults, doc, redraw });
};

/** The first key of a name that no event has; the addresses of new events have "new". */
export const freeKey = async ({ server }: FastifyRequest, name: string): Promise<string> => {
  const taken = new Set(['new']);
  for (;;) {
    const key = keyFrom(name, (one) => taken.has(one));
    if (!(await read(server.house.db, 'event', key))) return key;
    taken.add(key);
  }
};

const draw = async (reply: FastifyReply, form: Form, faults: readonly Fault[] = []) => {
  const model = await modelOf(reply.request, form);
  if (wantsPart(reply)) reply.header('hx-retarget', '#new-event').header('hx-reswap', 'outerMorph');
  return page(
    reply,
    'events/new',
    { title: 'Who, when, how many', nav: 'Events', form, faults, ...model },
    'events/_new',
  );
};

const modelOf = async (request: FastifyRequest, form: Form): Promise<NewEventPage> => {
  const { db } = request.server.house;
  const f = formatFor(request.kitchen);
  const clock = readClock(text(form, 'time'));
  const places = placesInOrder(await listPlaces(db), request.kitchen.locale).filter(
    ({ archived, key }) => !archived || key === text(form, 'place'),
  );
  const earlier = (await list(db, { from: addDays(todayOf(request), -731) }))
    .filter(({ dishes }) => dishes > 0)
    .reverse();
  const copied = earlier.find(({ key }) => key === text(form, 'menu'));
  return {
    places: places.map(({ key, name }) => ({ value: key, label: name })),
    menus: [
      { value: '', label: 'An empty menu' },
      ...earlier.map(({ key, name, date }) => ({ value: key, label: `${name}, ${f.dateYear(date)}` })),
    ],
    day: await sayDay(request, text(form, 'date')),
    time: isRead(clock) && clock.value !== text(form, 'time') ? clock.value : '',
    menu: copied
      ? `${f.count(copied.dishes, 'dish', 'dishes')} for ${f.count(copied.guests, 'guest')} there; quantities follow your guests, and its courses begin at your service time. Its costs beside the food and its price rule come too.`
      : '',
  };
};
