import type { FastifyReply } from 'fastify';
import { listOf } from '../../core/allergens.js';
import { isBlank, notPlain } from '../../core/plain-produce.js';
import { everyIngredient } from '../../store/ingredients.js';
import { savePlain } from '../../store/plain-produce.js';
import { Reading } from '../faults.js';
import type { Fault } from '../fields.js';
import { type Form, texts } from '../form.js';
import type { Answerer } from '../house.js';
import { pageOf } from '../links.js';
import { inOrder } from '../listing.js';
import { page } from '../page.js';
import { goTo, saving } from '../save.js';

type Row = { key: string; name: string; section: string; href: string; why: string };
export type PlainPage = { rows: Row[]; others: Row[]; list: string; entries: string[] };

/** Ingredients of which nothing is known, to be said free of the list many at a time. */
export const showPlain: Answerer = (request, reply) => draw(reply, { by: request.account?.name ?? '' });

/** Takes the cook's word for those that were ticked. */
export const takePlain: Answerer = async (request, reply) => {
  const form = request.body as Form;
  const reading = new Reading(form);
  const keys = texts(form, 'keys').slice(0, 5000);
  const by = reading.words('by', 'In whose word', 'Enter whose word it is: a name or initials.');
  if (keys.length === 0) reading.refuse('keys', 'Plain produce', 'Tick at least one ingredient.');
  if (by.length > 120) reading.refuse('by', 'In whose word', 'Enter a name of at most 120 signs.');
  const again = (faults: readonly Fault[]) => draw(reply.code(422), form, faults);
  if (reading.faults.length > 0) return again(reading.faults);
  const outcome = await savePlain(request.server.house.db, { keys, by }, saving(reply));
  if (outcome.outcome === 'gone') return reply.callNotFound();
  if (outcome.outcome === 'refused')
    return again(
      outcome.problems.map(({ sentence }) => ({ field: 'keys', label: 'Plain produce', sentence })),
    );
  return goTo(reply, `/ingredients/plain${outcome.together === null ? '' : `?together=${outcome.together}`}`);
};

const draw = async (reply: FastifyReply, form: Form, faults: readonly Fault[] = []) => {
  const { kitchen, server } = reply.request;
  const blank = inOrder((await everyIngredient(server.house.db)).filter(isBlank), kitchen.locale);
  const rows = blank.map((one): Row => {
    const { key, name, section } = one;
    const why = notPlain(one);
    return {
      key,
      name,
      section,
      why,
      href: why ? `${pageOf('ingredient', key)}/label` : pageOf('ingredient', key),
    };
  });
  const list = listOf(kitchen);
  const model: PlainPage = {
    rows: rows.filter(({ why }) => why === ''),
    others: rows.filter(({ why }) => why !== ''),
    list: list.name,
    entries: list.items.map(({ short }) => short.toLowerCase()),
  };
  return page(reply, 'ingredients/plain', { title: 'Plain produce', nav: 'Recipes', form, faults, ...model });
};
