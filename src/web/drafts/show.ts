import type { FastifyRequest } from 'fastify';
import { type KeptDraft, readDraft, throwDraft } from '../../store/drafts.js';
import type { Form } from '../form.js';
import { type Answerer, param, query } from '../house.js';
import { pageOf } from '../links.js';
import { goTo } from '../save.js';
import { drawDraft } from './draw.js';

/** The draft that an address names. */
export const draftAt = (request: FastifyRequest) => {
  const id = param(request, 'draft');
  return /^\d{1,15}$/.test(id) ? readDraft(request.server.house.db, Number(id)) : Promise.resolve(undefined);
};

export const formIn = ({ form }: KeptDraft): Form => structuredClone(form) as Form;

/** A draft beside its source; one that became a recipe leads there, one that was thrown away says so. */
export const showDraft: Answerer = async (request, reply) => {
  const draft = await draftAt(request);
  if (!draft) return reply.callNotFound();
  if (draft.recipe !== null) return reply.redirect(pageOf('recipe', draft.recipe), 303);
  if (draft.thrown) return reply.redirect(`/recipes/read?thrown=${draft.id}`, 303);
  return drawDraft(reply, draft, formIn(draft), { after: query(request, 'after') });
};

/** Throws a draft away; the page it leads to can take that back. */
export const throwAway: Answerer = async (request, reply) => {
  const draft = await draftAt(request);
  if (!draft) return reply.callNotFound();
  const { db, clock } = request.server.house;
  await throwDraft(db, draft.id, clock());
  return goTo(reply, `/recipes/read?thrown=${draft.id}`);
};

/** Brings a draft back that was thrown away. */
export const bringBack: Answerer = async (request, reply) => {
  const draft = await draftAt(request);
  if (!draft) return reply.callNotFound();
  await throwDraft(request.server.house.db, draft.id, null);
  return goTo(reply, `/recipes/read/${draft.id}`);
};
