import type { FastifyReply, FastifyRequest } from 'fastify';
import { addDays } from '../../core/calendar.js';
import type { Event } from '../../core/facts/event.js';
import { minutePrice } from '../../core/minute-price.js';
import { readPercent, readWhole } from '../../core/reading.js';
import { list } from '../../store/events.js';
import { todayOf } from '../coming.js';
import { eventOf, type OneEvent } from '../events/event.js';
import { Reading } from '../faults.js';
import type { Choice, Fault } from '../fields.js';
import type { Form } from '../form.js';
import { formatFor } from '../format.js';
import { type Answerer, query } from '../house.js';
import { page } from '../page.js';
import { type MinuteAnswer, minuteAnswer } from './answer.js';

export type MinutePage = {
  menus: Choice[];
  /** undefined until guests are typed. */
  answer: MinuteAnswer | undefined;
  /** true when the kitchen states no margin to live on, so that one is asked for. */
  noFloor: boolean;
};

const howLong = 731;

/** A price in a minute: a menu that was cooked before, so many guests, the margin to keep. Nothing is saved. */
export const showMinutePrice: Answerer = async (request, reply) => {
  const menus = await menusOf(request);
  const form: Form = {
    menu: query(request, 'menu') || menus[0]?.value || '',
    guests: query(request, 'guests'),
    margin: query(request, 'margin') || (request.kitchen.marginFloor ?? ''),
  };
  if (menus.length === 0) return draw(reply, form, { menus, answer: undefined, noFloor: false });
  const one = await eventOf(request, String(form.menu));
  const reading = new Reading(form);
  const answer = form.guests === '' ? undefined : read(reading, one);
  if (reading.faults.length > 0) reply.code(422);
  const noFloor = request.kitchen.marginFloor === null;
  return draw(reply, form, { menus: withOne(menus, one.event), answer, noFloor }, reading.faults);
};

const read = (reading: Reading, { event, facts }: OneEvent): MinuteAnswer | undefined => {
  const guests = reading.take(
    'guests',
    'Guests',
    (typed) => readWhole(typed, 'the number of guests', 1, 100_000),
    1,
  );
  const margin = reading.maybe('margin', 'Margin to keep', (typed) => readPercent(typed, 'the margin', 99));
  return reading.faults.length > 0
    ? undefined
    : minuteAnswer(minutePrice(event, guests, margin, facts), facts.kitchen);
};

const draw = (reply: FastifyReply, form: Form, model: MinutePage, faults: readonly Fault[] = []) =>
  page(
    reply,
    'price/show',
    { title: 'A price in a minute', nav: 'Costing', form, faults, ...model },
    'price/_minute',
  );

/** Menus of the last two years and to come, those cooked last first. */
const menusOf = async (request: FastifyRequest): Promise<Choice[]> => {
  const today = todayOf(request);
  const f = formatFor(request.kitchen);
  const all = await list(request.server.house.db, { from: addDays(today, -howLong) });
  const cooked = all.filter(({ dishes, archived }) => dishes > 0 && !archived);
  const past = cooked.filter(({ date }) => date < today).reverse();
  return [...past, ...cooked.filter(({ date }) => date >= today)].map(({ key, name, date, guests }) => ({
    value: key,
    label: `${name}, ${f.dateYear(date)}, ${f.count(guests, 'guest')}`,
  }));
};

const withOne = (menus: readonly Choice[], { key, name }: Event): Choice[] =>
  menus.some(({ value }) => value === key) ? [...menus] : [{ value: key, label: name }, ...menus];
