import type { FastifyRequest } from 'fastify';
import { scaledRecipe } from '../../core/sheets/scaled-recipe.js';
import { scaledRecipeSheet } from '../../core/sheets/scaled-recipe-sheet.js';
import { read } from '../../store/documents.js';
import { consistently, loadFacts } from '../../store/facts.js';
import { relativesOf } from '../../store/recipes.js';
import { answerSheet, formOf } from '../answer.js';
import { printedNow } from '../coming.js';
import { Refused } from '../guards.js';
import { type Answerer, param, query } from '../house.js';
import { pageOf } from '../links.js';
import { wantsPart } from '../page.js';
import { forDish } from './asked.js';
import { askedInAddress, typedIn } from './how-much.js';
import { recipePage } from './page-model.js';
import { usesNow } from './uses.js';

/** A recipe at base, for portions typed beside it, or as a dish of an event needs it: page, paper, CSV and JSON. */
export const showRecipe: Answerer = async (request, reply) => {
  const key = param(request, 'key');
  const found = await everything(request, key);
  if (!found) return reply.callNotFound();
  const { stored, facts } = found;
  const event = query(request, 'event');
  const dish = event === '' ? undefined : await forDish(request, key);
  if (event !== '' && !dish)
    throw new Refused(
      'This recipe is in no dish of that event. Open the event’s menu and start from there.',
      404,
    );
  const typed = typedIn(request, stored.doc, facts);
  if (typed.faults.length > 0 && formOf(request) !== 'page')
    throw new Refused(typed.faults.map(({ sentence }) => sentence).join(' '), 422);
  const recipe = dish?.recipe ?? stored.doc;
  const answer = scaledRecipe(recipe, dish?.asked ?? typed.asked, dish?.facts ?? facts, dish?.venue);
  const uses = await usesNow(request, key);
  const { model, form } = recipePage(answer, {
    ...found,
    uses,
    event,
    dish: query(request, 'dish'),
    typed,
    starts: dish?.starts ?? new Map(),
    printed: printedNow(request),
    byName: request.account !== null,
  });
  if (typed.faults.length > 0) reply.code(422).header('hx-push-url', 'false');
  else if (wantsPart(reply))
    reply.header('hx-push-url', `${pageOf('recipe', key)}${askedInAddress(typed.form)}`);
  return answerSheet(
    reply,
    scaledRecipeSheet(answer),
    'recipes/show',
    { title: recipe.name, nav: 'Recipes', form, faults: typed.faults, ...model },
    'recipes/show-update',
  );
};

/** The recipe with all that stands around it, in one consistent read. */
const everything = (request: FastifyRequest, key: string) =>
  consistently(request.server.house.db, async (trx) => {
    const stored = await read(trx, 'recipe', key);
    const facts = stored && (await loadFacts(trx, { recipes: [key, stored.doc.variantOf ?? key] }));
    return stored && facts && { stored, facts, relatives: await relativesOf(trx, key) };
  });
