import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Ingredient } from '../../core/facts/ingredient.js';
import type { Kitchen } from '../../core/facts/kitchen.js';
import { read } from '../../store/documents.js';
import type { Db } from '../../store/schema.js';
import { todayOf } from '../coming.js';
import { Reading } from '../faults.js';
import type { Fault } from '../fields.js';
import type { Form } from '../form.js';
import { type Answerer, param } from '../house.js';
import { pageOf } from '../links.js';
import { page } from '../page.js';
import { save } from '../save.js';

/** What a form of an ingredient may ask: the kitchen's ways, the day, who is there. */
export type At = { kitchen: Kitchen; today: string; who: string; db: Db };

export type PartName = 'basics' | 'packs' | 'yield' | 'label' | 'diets' | 'substitutes' | 'keeping';

type Change = (before: Ingredient) => Ingredient;

/** One of the forms in which an ingredient is changed, part by part. */
export type Part<Around extends object = object> = {
  name: PartName;
  /** What its page is called beside the ingredient's name, and what its button says. */
  title: string;
  button: string;
  form: (doc: Ingredient, at: At) => Promise<Form> | Form;
  /** What a button within the form asks for; undefined when it asks to be saved. */
  press?: (form: Form, doc: Ingredient, at: At) => { form: Form; at: string } | undefined;
  read: (reading: Reading, doc: Ingredient, at: At) => Promise<Change> | Change;
  around: (doc: Ingredient, form: Form, at: At) => Promise<Around> | Around;
};

export type PartPage = {
  key: string;
  name: string;
  part: PartName;
  partTitle: string;
  button: string;
  address: string;
  at: string;
};

/** The form of one part of an ingredient, as stored; with what beside it could not be taken in. */
export const askFor =
  <A extends object>(part: Part<A>, faults: readonly Fault[] = []): Answerer =>
  async (request, reply) => {
    const stored = await read(request.server.house.db, 'ingredient', param(request, 'key'));
    if (!stored) return reply.callNotFound();
    const form = { revision: String(stored.revision), ...(await part.form(stored.doc, atOf(request))) };
    return draw(reply, part, stored.doc, form, faults);
  };

/** Saves one part of an ingredient, or does what a button within its form asks. */
export const savePart =
  <A extends object>(part: Part<A>): Answerer =>
  async (request, reply) => {
    const stored = await read(request.server.house.db, 'ingredient', param(request, 'key'));
    if (!stored) return reply.callNotFound();
    const { doc, key } = stored;
    const form = request.body as Form;
    const pressed = part.press?.(form, doc, atOf(request));
    if (pressed) return draw(reply, part, doc, pressed.form, [], pressed.at);
    const reading = new Reading(form);
    const change = await part.read(reading, doc, atOf(request));
    const redraw = (faults: readonly Fault[]) => draw(reply, part, doc, form, faults);
    return save(reply, { entity: 'ingredient', key, form, faults: reading.faults, change, redraw });
  };

const atOf = (request: FastifyRequest): At => ({
  kitchen: request.kitchen,
  today: todayOf(request),
  who: request.account?.name ?? '',
  db: request.server.house.db,
});

const draw = async <A extends object>(
  reply: FastifyReply,
  part: Part<A>,
  doc: Ingredient,
  form: Form,
  faults: readonly Fault[] = [],
  at = '',
) => {
  const around = await part.around(doc, form, atOf(reply.request));
  const model: PartPage & A = {
    key: doc.key,
    name: doc.name,
    part: part.name,
    partTitle: part.title,
    button: part.button,
    address: `${pageOf('ingredient', doc.key)}/${part.name}`,
    at,
    ...around,
  };
  const head = { title: `${doc.name}, ${part.title.toLowerCase()}`, nav: 'Recipes', form, faults } as const;
  return page(reply, 'ingredients/part', { ...head, ...model }, 'ingredients/_part');
};
