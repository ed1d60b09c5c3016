import { read } from '../store/documents.js';
import { remove } from '../store/removal.js';
import { type Use, usesOf } from '../store/uses.js';
import { type Form, text } from './form.js';
import { Refused } from './guards.js';
import { type Answerer, param } from './house.js';
import { listOf, pageOf } from './links.js';
import { inOrder } from './listing.js';
import { page } from './page.js';
import { goTo, save, saving, withReceipt } from './save.js';

type Kind = 'recipe' | 'ingredient';

export type LeavingPage = {
  kind: Kind;
  key: string;
  name: string;
  revision: number;
  archived: boolean;
  uses: { name: string; href: string; kind: Use['entity'] }[];
};

/** What uses a recipe or an ingredient, and the ways to be rid of it: archive it, or remove what nothing uses. */
export const askToLeave =
  (kind: Kind): Answerer =>
  async (request, reply) => {
    const { db } = request.server.house;
    const key = param(request, 'key');
    const stored = await read(db, kind, key);
    if (!stored) return reply.callNotFound();
    const uses = inOrder(await usesOf(db, kind, key), request.kitchen.locale).map(
      ({ entity, key, name }) => ({
        name,
        href: pageOf(entity, key),
        kind: entity,
      }),
    );
    const { name, archived } = stored.doc;
    const model = { kind, key, name, revision: stored.revision, archived, uses };
    return page(reply, 'leaving/show', { title: `Archive or remove ${name}`, nav: 'Recipes', ...model });
  };

/** Takes it out of the lists, or brings it back. */
export const archive =
  (kind: Kind): Answerer =>
  async (_request, reply) => {
    const form = reply.request.body as Form;
    const archived = text(form, 'archived') !== 'no';
    const redraw = (faults: readonly { sentence: string }[]) => {
      throw new Refused(faults.map(({ sentence }) => sentence).join(' '), 422);
    };
    const key = param(reply.request, 'key');
    const change = <D extends object>(doc: D): D => ({ ...doc, archived });
    return save(reply, { entity: kind, key, form, faults: [], change, redraw });
  };

/** Removes what nothing uses; the receipt takes it back. */
export const removeIt =
  (kind: Kind): Answerer =>
  async (request, reply) => {
    const revision = Number(text(request.body as Form, 'revision'));
    const { db } = request.server.house;
    const removal = await remove(db, kind, param(request, 'key'), { revision, ...saving(reply) });
    if (removal.outcome === 'gone') return reply.callNotFound();
    if (removal.outcome === 'refused')
      throw new Refused(removal.problems.map(({ sentence }) => sentence).join(' '), 409);
    return goTo(reply, withReceipt(listOf(kind), { ...removal, merged: [] }));
  };
