import type { Ingredient } from '../../core/facts/ingredient.js';
import { lackingOf, referenceOf, takenFrom } from '../../core/own-figures.js';
import { read } from '../../store/documents.js';
import { type Form, text } from '../form.js';
import { type Answerer, param } from '../house.js';
import { pageOf } from '../links.js';
import { save } from '../save.js';
import { showIngredient } from './show.js';

/** Takes a figure back from the reference, or all that the ingredient lacks and the reference has. */
export const takeFigures: Answerer = async (request, reply) => {
  const stored = await read(request.server.house.db, 'ingredient', param(request, 'key'));
  if (!stored || !referenceOf(stored.doc)) return reply.callNotFound();
  const form = request.body as Form;
  const asked = text(form, 'take');
  return save(reply, {
    entity: 'ingredient',
    key: stored.key,
    form,
    faults: [],
    change: (doc) => taken(doc, asked),
    redraw: () => showIngredient(request, reply),
    to: () => `${pageOf('ingredient', stored.key)}#yield`,
  });
};

const taken = (doc: Ingredient, asked: string): Ingredient => {
  const food = referenceOf(doc);
  if (!food) return doc;
  const all = asked === 'lacking' ? lackingOf(food, doc) : [asked];
  return all.reduce((one, at) => takenFrom(food, one, at), doc);
};
