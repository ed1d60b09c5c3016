import type { FastifyReply, FastifyRequest } from 'fastify';
import { type Recipe, recipe } from '../../core/facts/recipe.js';
import { variantOf } from '../../core/variant.js';
import { editIn } from '../../store/changes.js';
import { read } from '../../store/documents.js';
import { namesOf } from '../../store/names.js';
import type { Outcome } from '../../store/outcome.js';
import { withNewIngredients } from '../../store/recipe-save.js';
import { add } from '../../store/saves.js';
import type { Trx } from '../../store/schema.js';
import { Reading } from '../faults.js';
import type { Fault } from '../fields.js';
import { type Form, text } from '../form.js';
import { type Answerer, param, query } from '../house.js';
import { keyFrom } from '../keys.js';
import { answer, saving } from '../save.js';
import { drawRecipe } from './draw.js';
import { emptyForm, recipeForm } from './form.js';
import { Items } from './items.js';
import { pressed } from './pressed.js';
import { previewOf } from './preview.js';
import { readRecipe } from './read.js';

/** What the form needs of the kitchen around it. */
const around = async ({ server }: FastifyRequest, key: string) => {
  const names = await namesOf(server.house.db);
  return { key, names, items: new Items(names) };
};
type Around = Awaited<ReturnType<typeof around>>;

/** The form of a new recipe; `variant` names the recipe that it begins as a copy of. */
export const askForRecipe: Answerer = async (request, reply) => {
  const about = { ...(await around(request, '')), at: 'name' };
  const base = query(request, 'variant');
  if (base === '') return drawRecipe(reply, { ...emptyForm(), name: query(request, 'name') }, about);
  const stored = await read(request.server.house.db, 'recipe', base);
  if (!stored) return reply.callNotFound();
  const copy = variantOf(stored.doc, 'new', `${stored.doc.name.slice(0, 110)}, variant`);
  return drawRecipe(reply, recipeForm(copy, 0, about.items, request.kitchen), about);
};

export const addRecipe: Answerer = async (request, reply) => {
  const about = await around(request, '');
  const taken = new Set(['new', ...about.names.recipes.map(({ key }) => key)]);
  const key = keyFrom(text(request.body as Form, 'name'), (one) => taken.has(one));
  const begun = recipe.parse({ key, name: 'New recipe', yield: { portions: '1' } });
  return receive(reply, about, begun, (trx, change) => add(trx, 'recipe', change(begun), saving(reply)));
};

/** The form of a recipe. */
export const changeRecipe: Answerer = async (request, reply) => {
  const about = await around(request, param(request, 'key'));
  const stored = await read(request.server.house.db, 'recipe', about.key);
  if (!stored) return reply.callNotFound();
  return drawRecipe(reply, recipeForm(stored.doc, stored.revision, about.items, request.kitchen), about);
};

export const saveRecipe: Answerer = async (request, reply) => {
  const about = await around(request, param(request, 'key'));
  const stored = await read(request.server.house.db, 'recipe', about.key);
  if (!stored) return reply.callNotFound();
  const revision = Number(text(request.body as Form, 'revision'));
  return receive(reply, about, stored.doc, (trx, change) =>
    editIn(trx, 'recipe', about.key, { revision, change, ...saving(reply) }),
  );
};

/** What saving the form as it stands would change, for the page that is open. */
export const previewRecipe: Answerer = async (request, reply) => {
  const about = await around(request, param(request, 'key'));
  const stored = await read(request.server.house.db, 'recipe', about.key);
  if (!stored) return reply.callNotFound();
  const form = request.body as Form;
  const reading = new Reading(form);
  const { change, added } = readRecipe(reading, contextOf(request, about));
  const preview = reading.faults.length > 0 ? undefined : await previewOf(request, change(stored.doc), added);
  return drawRecipe(reply, form, { ...about, preview, part: 'recipes/_preview' });
};

const contextOf = ({ kitchen }: FastifyRequest, { items, names }: Around) => ({
  items,
  kitchen,
  isTaken: (key: string) => key === 'new' || names.ingredients.some((one) => one.key === key),
});

type Save = (trx: Trx, change: (before: Recipe) => Recipe) => Promise<Outcome<'recipe'>>;

/** Takes the form in: does what a button within it asks, shows what would change, or saves. */
const receive = async (reply: FastifyReply, about: Around, stands: Recipe, save: Save) => {
  const { request } = reply;
  const form = request.body as Form;
  const row = pressed(form, about.items);
  if (row) return drawRecipe(reply, row.form, { ...about, at: row.at });
  const reading = new Reading(form);
  const { change, added } = readRecipe(reading, contextOf(request, about));
  const redraw = (faults: readonly Fault[]) => drawRecipe(reply, form, { ...about, faults });
  if (reading.faults.length > 0) {
    reply.code(422);
    return redraw(reading.faults);
  }
  if (text(form, 'do') === 'preview')
    return drawRecipe(reply, form, { ...about, preview: await previewOf(request, change(stands), added) });
  const { db } = request.server.house;
  const outcome = await withNewIngredients(db, added, saving(reply), (trx) => save(trx, change));
  const revision = Number(text(form, 'revision'));
  return answer(reply, { entity: 'recipe', key: stands.key, form, redraw }, outcome, revision);
};
