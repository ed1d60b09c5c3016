import type { FastifyReply } from 'fastify';
import { type Built, buildRecipe } from '../../core/exchange/draft/build.js';
import type { Problem } from '../../core/problem.js';
import { makeRecipe } from '../../store/draft-recipe.js';
import { type KeptDraft, readDraft, saveDraft } from '../../store/drafts.js';
import { faultsOf, Reading } from '../faults.js';
import type { Fault } from '../fields.js';
import { type Form, text } from '../form.js';
import type { Answerer } from '../house.js';
import { keyFrom } from '../keys.js';
import { pageOf } from '../links.js';
import { wantsPart } from '../page.js';
import { goTo, saving, withReceipt } from '../save.js';
import { type Around, aroundForm } from './around.js';
import { readConfirmed } from './confirmed.js';
import { drawDraft } from './draw.js';
import { pressed } from './pressed.js';
import { draftAt } from './show.js';

/** Takes a draft's form in: does what a button within it asks and keeps that, or makes the recipe. */
export const takeDraft: Answerer = async (request, reply) => {
  const draft = await draftAt(request);
  if (!draft) return reply.callNotFound();
  if (draft.recipe !== null) return goTo(reply, pageOf('recipe', draft.recipe));
  const { revision, ...form } = request.body as Form;
  if (Number(revision) !== draft.revision) return conflict(reply, draft, form);
  const context = { read: draft.read, around: await aroundForm(request, form), kitchen: request.kitchen };
  const did = pressed(form, context);
  delete form.do;
  const kept = await keep(reply, draft, form);
  if (!kept) return conflict(reply, (await draftAt(request)) ?? draft, form);
  if (!did) return make(reply, kept, form, context.around);
  if (did.faults.length > 0) return refuse(reply, kept, form, did.faults);
  if (!wantsPart(reply)) return reply.redirect(`/recipes/read/${draft.id}?after=${did.at}`, 303);
  return drawDraft(reply, kept, form, { after: did.at });
};

const keep = async (reply: FastifyReply, draft: KeptDraft, form: Form): Promise<KeptDraft | undefined> => {
  const { db } = reply.request.server.house;
  const name = text(form, 'name').trim().slice(0, 120);
  const by = saving(reply);
  const revision = await saveDraft(db, { id: draft.id, revision: draft.revision, name, form }, by);
  if (revision === undefined) return undefined;
  return { ...draft, name, revision, updatedAt: by.at, updatedBy: by.who };
};

/** Somebody saved the draft since the form was drawn: what was typed stays, and saving again keeps it. */
const conflict = (reply: FastifyReply, stale: KeptDraft, form: Form) => {
  delete form.do;
  reply.code(409);
  return drawDraft(reply, stale, form, { stale });
};

const refuse = (reply: FastifyReply, draft: KeptDraft, form: Form, faults: readonly Fault[]) => {
  reply.code(422);
  return drawDraft(reply, draft, form, { faults });
};

const make = async (reply: FastifyReply, draft: KeptDraft, form: Form, around: Around) => {
  const { request } = reply;
  const reading = new Reading(form);
  const confirmed = readConfirmed(reading, { read: draft.read, around, kitchen: request.kitchen });
  if (reading.faults.length > 0) return refuse(reply, draft, form, reading.faults);
  const built = buildRecipe(confirmed, {
    recipe: keysBeside(around.taken.recipes),
    ingredient: keysBeside(around.taken.ingredients),
  });
  const { db } = request.server.house;
  const outcome = await makeRecipe(db, draft, built, saving(reply));
  if (outcome.outcome === 'saved')
    return goTo(reply, withReceipt(pageOf('recipe', built.recipe.key), outcome));
  if (outcome.outcome === 'refused')
    return refuse(reply, draft, form, refusals(outcome.problems, form, built));
  return conflict(reply, (await readDraft(db, draft.id)) ?? draft, form);
};

/** Keys for names, none twice and none that is taken. */
const keysBeside = (taken: ReadonlySet<string>) => {
  const given = new Set(taken);
  return (name: string): string => {
    const key = keyFrom(name, (one) => given.has(one));
    given.add(key);
    return key;
  };
};

/** Why it was refused, at the fields of the form; what concerns a component stands at its own name. */
const refusals = (problems: readonly Problem[], form: Form, { components }: Built): Fault[] =>
  problems.flatMap((problem) => {
    const { entity, key, field = '' } = problem.subject;
    const own = entity === 'recipe' && components.some((one) => one.key === key);
    if (!own || field.startsWith('lines/')) return faultsOf([problem], form);
    const name = components.find((one) => one.key === key)?.name ?? '';
    const parts = Array.isArray(form.parts) ? (form.parts as Form[]) : [];
    const at = parts.findIndex(
      (part) => text(part, 'as') === 'component' && text(part, 'name').trim() === name,
    );
    return [{ field: `parts[${at}].name`, label: name, sentence: problem.sentence }];
  });
