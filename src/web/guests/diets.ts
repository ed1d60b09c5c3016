import type { FastifyReply } from 'fastify';
import { type Answers, answersOf } from '../../core/answers.js';
import { coverageOf, coverageProblems } from '../../core/coverage.js';
import { dietName, dietOf, dietsOf } from '../../core/diets.js';
import type { Event } from '../../core/facts/event.js';
import type { Kitchen } from '../../core/facts/kitchen.js';
import { namesOf } from '../../store/names.js';
import { addressesOf } from '../events/addresses.js';
import { type EventHead, eventOf, headOf, type OneEvent } from '../events/event.js';
import { Reading } from '../faults.js';
import type { Choice, Fault } from '../fields.js';
import { type Form, rows, text, texts } from '../form.js';
import { formatFor } from '../format.js';
import type { Answerer } from '../house.js';
import { page } from '../page.js';
import { save } from '../save.js';
import { forgotten } from './forget.js';
import { dietsForm, type Ground, guestsChanged, keptForListed, readDiets, withSaid } from './form.js';

export type DietsPage = {
  head: EventHead;
  address: ReturnType<typeof addressesOf>;
  groups: Choice[];
  kinds: { title: string; choices: Choice[] }[];
  /** What each row says they do not eat, in words, and what is usually minded with it. */
  ticked: { words: string; cautions: string[] }[];
  ingredients: string[];
  answers: Answers;
  /** The row to go on in. */
  at: string;
  /** What was forgotten just now, in a sentence. */
  forgotten: string;
  /** Who goes without as it is saved, a sentence each; nothing of a party that is over. */
  without: string[];
};

/** Guests and their diets, by name or number. */
export const showDiets: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  const ground = await groundOf(reply, one);
  return draw(reply, one, ground, dietsForm(ground, one.revision));
};

export const saveDiets: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  const { event } = one;
  const sent = request.body as Form;
  const ground = await groundOf(reply, one);
  const changed = guestsChanged(sent, ground);
  if (changed) return draw(reply, one, ground, changed.form, [], changed.at);
  const form = withSaid(sent, ground);
  const reading = new Reading(form);
  const wanted = readDiets(reading, ground);
  return save(reply, {
    entity: 'event',
    key: event.key,
    form,
    faults: reading.faults,
    change: (doc) => keptForListed({ ...doc, ...wanted }),
    redraw: (faults) => draw(reply, one, ground, form, faults),
    to: () => addressesOf(event.key).diets,
  });
};

/** A done event knows the diets its kitchen had then. */
const groundOf = async ({ request }: FastifyReply, { event }: OneEvent): Promise<Ground> => ({
  event,
  kitchen: event.served?.kitchen ?? request.kitchen,
  ingredients: (await namesOf(request.server.house.db)).ingredients,
});

const draw = async (
  reply: FastifyReply,
  one: OneEvent,
  ground: Ground,
  form: Form,
  faults: readonly Fault[] = [],
  at = '',
): Promise<unknown> => {
  const { event } = one;
  // What is typed counts as far as it can be read.
  const typed: Event = { ...event, ...readDiets(new Reading(structuredClone(form)), ground) };
  const model: DietsPage = {
    head: await headOf(reply.request, one),
    address: addressesOf(event.key),
    groups: event.groups.map(({ key, name }) => ({ value: key, label: name })),
    kinds: kindsOf(ground.kitchen),
    ticked: rows(form, 'guests').map((row) => inWords(row, ground.kitchen)),
    ingredients: ground.ingredients.map(({ name }) => name),
    answers: answersOf(typed),
    at,
    forgotten: forgotten(reply.request, formatFor(reply.request.kitchen)),
    without: event.state === 'done' ? [] : withoutIn(one),
  };
  return page(
    reply,
    'guests/diets',
    { title: `Who eats what, ${event.name}`, nav: 'Events', form, faults, ...model },
    'guests/_diets',
  );
};

const withoutIn = ({ event, facts }: OneEvent): string[] =>
  coverageProblems(event, coverageOf(event, facts))
    .filter(({ weight }) => weight === 'stop')
    .map(({ sentence }) => sentence);

const titles = [
  ['choice', 'By choice'],
  ['religious', 'By faith'],
  ['medical', 'Medical'],
  ['allergen', 'Avoids an allergen'],
] as const;

const kindsOf = (kitchen: Kitchen): DietsPage['kinds'] => {
  const all = dietsOf(kitchen);
  return titles.map(([kind, title]) => ({
    title,
    choices: all.filter((diet) => diet.kind === kind).map(({ id, name }) => ({ value: id, label: name })),
  }));
};

const inWords = (row: Form, kitchen: Kitchen): DietsPage['ticked'][number] => {
  const ids = texts(row, 'diets');
  const avoids = text(row, 'avoids').trim();
  const traces = text(row, 'traces') === 'no' && 'traces do not matter';
  const said = [...ids.map((id) => dietName(id, kitchen)), avoids && `no ${avoids.toLowerCase()}`, traces];
  return {
    words: said.filter(Boolean).join(', '),
    cautions: ids.map((id) => dietOf(id, kitchen)?.caution ?? '').filter(Boolean),
  };
};
