import type { FastifyReply } from 'fastify';
import { factsOf } from '../../core/facts/facts.js';
import { isOver } from '../../core/over.js';
import { namesOf } from '../../store/names.js';
import { todayOf } from '../coming.js';
import { addressesOf } from '../events/addresses.js';
import { type EventHead, eventOf, headOf, type OneEvent } from '../events/event.js';
import { Reading } from '../faults.js';
import type { Fault } from '../fields.js';
import type { Form } from '../form.js';
import { formatFor } from '../format.js';
import type { Answerer } from '../house.js';
import { page, wantsPart } from '../page.js';
import { rowsChanged } from '../rows.js';
import { goTo, save } from '../save.js';
import { readAfterwards } from './read.js';
import { type Asked, afterwardsForm, askedOf, type Named } from './rows.js';

export type AfterwardsPage = {
  head: EventHead;
  at: ReturnType<typeof addressesOf>;
  asked: Asked;
  names: string[];
  currency: string;
  goOn: string;
  /** true once it is marked done, so that it counts for next time. */
  done: boolean;
};

/** What a party really came to, to be noted once it is over. */
export const askForAfterwards: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  const { event, facts, revision } = one;
  if (!isOver(event, todayOf(request)))
    return page(reply, 'afterwards/not-yet', {
      title: `Afterwards, ${event.name}`,
      nav: 'Events',
      head: await headOf(request, one),
      at: addressesOf(event.key),
    });
  const ingredients = await ingredientsFor(reply, one);
  const names = new Map(ingredients.map(({ key, name }) => [key, name]));
  const form = afterwardsForm(event, revision, askedOf(event, facts), names, formatFor(request.kitchen));
  return draw(reply, one, ingredients, form);
};

/** Notes it; a button of a row only draws the form again. */
export const saveAfterwards: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  const { event, facts } = one;
  if (!isOver(event, todayOf(request))) return goTo(reply, addressesOf(event.key).afterwards);
  const form = request.body as Form;
  const ingredients = await ingredientsFor(reply, one);
  const changed = rowsChanged(form);
  if (changed) return draw(reply, one, ingredients, changed.form, [], changed.at);
  const reading = new Reading(form);
  const { currency } = request.kitchen;
  const change = readAfterwards(reading, { event, asked: askedOf(event, facts), ingredients, currency });
  return save(reply, {
    entity: 'event',
    key: event.key,
    form,
    faults: reading.faults,
    change,
    redraw: (faults) => draw(reply, one, ingredients, form, faults),
    to: () => addressesOf(event.key).besideReal,
  });
};

/** Every ingredient by name, and those that were kept with the party, by the names they had. */
const ingredientsFor = async ({ request }: FastifyReply, { event, facts }: OneEvent): Promise<Named[]> => {
  const served = [...factsOf(event, facts).ingredients.values()].map(({ key, name }) => ({ key, name }));
  const there = new Set(served.map(({ key }) => key));
  const { ingredients } = await namesOf(request.server.house.db);
  return [...served, ...ingredients.filter(({ key }) => !there.has(key))];
};

const draw = async (
  reply: FastifyReply,
  one: OneEvent,
  ingredients: readonly Named[],
  form: Form,
  faults: readonly Fault[] = [],
  goOn = '',
) => {
  const { request } = reply;
  const { event, facts } = one;
  if (wantsPart(reply)) reply.header('hx-retarget', '#afterwards').header('hx-reswap', 'outerMorph');
  const model: AfterwardsPage = {
    head: await headOf(request, one),
    at: addressesOf(event.key),
    asked: askedOf(event, facts),
    names: ingredients.map(({ name }) => name).sort((a, b) => a.localeCompare(b, request.kitchen.locale)),
    currency: request.kitchen.currency,
    goOn,
    done: event.state === 'done',
  };
  const title = `Afterwards, ${event.name}`;
  return page(reply, 'afterwards/note', { title, nav: 'Events', form, faults, ...model }, 'afterwards/_note');
};
