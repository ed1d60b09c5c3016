import type { FastifyReply } from 'fastify';
import { type Answers, answersOf } from '../../core/answers.js';
import { dietName, diets } from '../../core/diets.js';
import type { Event } from '../../core/facts/event.js';
import { addressesOf } from '../events/addresses.js';
import { type EventHead, eventOf, headOf, type OneEvent } from '../events/event.js';
import { Reading } from '../faults.js';
import type { Choice, Fault } from '../fields.js';
import { type Form, rows, texts } from '../form.js';
import { formatFor } from '../format.js';
import type { Answerer } from '../house.js';
import { page } from '../page.js';
import { save } from '../save.js';
import { forgotten } from './forget.js';
import { dietsForm, guestsChanged, readDiets, withSaid } from './form.js';

export type DietsPage = {
  head: EventHead;
  address: ReturnType<typeof addressesOf>;
  groups: Choice[];
  kinds: { title: string; choices: Choice[] }[];
  /** The diets ticked in each row, in words. */
  ticked: string[];
  answers: Answers;
  /** The row to go on in. */
  at: string;
  /** What was forgotten just now, in a sentence. */
  forgotten: string;
};

/** Guests and their diets, by name or number. */
export const showDiets: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  return draw(reply, one, dietsForm(one.event, one.revision));
};

export const saveDiets: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  const { event } = one;
  const sent = request.body as Form;
  const changed = guestsChanged(sent, event);
  if (changed) return draw(reply, one, changed.form, [], changed.at);
  const form = withSaid(sent, event);
  const reading = new Reading(form);
  const wanted = readDiets(reading, event);
  return save(reply, {
    entity: 'event',
    key: event.key,
    form,
    faults: reading.faults,
    change: (doc) => ({ ...doc, ...wanted }),
    redraw: (faults) => draw(reply, one, form, faults),
    to: () => addressesOf(event.key).diets,
  });
};

const draw = async (
  reply: FastifyReply,
  one: OneEvent,
  form: Form,
  faults: readonly Fault[] = [],
  at = '',
): Promise<unknown> => {
  const { event } = one;
  // What is typed counts as far as it can be read.
  const typed: Event = { ...event, ...readDiets(new Reading(structuredClone(form)), event) };
  const model: DietsPage = {
    head: await headOf(reply.request, one),
    address: addressesOf(event.key),
    groups: event.groups.map(({ key, name }) => ({ value: key, label: name })),
    kinds,
    ticked: rows(form, 'guests').map((row) =>
      texts(row, 'diets')
        .map((id) => dietName(id, reply.request.kitchen))
        .join(', '),
    ),
    answers: answersOf(typed),
    at,
    forgotten: forgotten(reply.request, formatFor(reply.request.kitchen)),
  };
  return page(
    reply,
    'guests/diets',
    { title: `Who eats what, ${event.name}`, nav: 'Events', form, faults, ...model },
    'guests/_diets',
  );
};

const titles = [
  ['choice', 'By choice'],
  ['religious', 'By faith'],
  ['medical', 'Medical'],
  ['allergen', 'Avoids an allergen'],
] as const;

const kinds: DietsPage['kinds'] = titles.map(([kind, title]) => ({
  title,
  choices: diets.filter((diet) => diet.kind === kind).map(({ id, name }) => ({ value: id, label: name })),
}));
