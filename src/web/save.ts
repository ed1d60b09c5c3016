import type { FastifyReply } from 'fastify';
import type { EntityName, EntityOf } from '../core/facts/facts.js';
import { create, edit, type Outcome, type Saving } from '../store/changes.js';
import { faultsOf } from './faults.js';
import type { Fault } from './fields.js';
import { type Form, text } from './form.js';
import { who } from './house.js';
import { pageOf } from './links.js';
import { showMerge } from './merge/show.js';
import { wantsPart } from './page.js';

type Saved<N extends EntityName> = Extract<Outcome<N>, { outcome: 'saved' }>;

type Asked<N extends EntityName> = {
  entity: N;
  form: Form;
  /** What could not be read; when there is any, nothing is saved and the form is drawn again. */
  faults: readonly Fault[];
  /** Draws the form again with all that was typed; it is answered as 422. */
  redraw: (faults: readonly Fault[]) => Promise<unknown> | unknown;
  /** Where to go when it is saved; the page of the thing if not said. */
  to?: (saved: Saved<N>) => string;
  /** What to send instead when htmx asks for a part. */
  part?: (saved: Saved<N>) => Promise<unknown> | unknown;
};

/** Saves a change of a document from a form that carries its `revision`, and answers whatever comes of it. */
export const save = async <N extends EntityName>(
  reply: FastifyReply,
  asked: Asked<N> & { key: string; change: (doc: EntityOf[N]) => EntityOf[N] },
): Promise<unknown> => {
  const { entity, key, form, faults, redraw, change } = asked;
  if (faults.length > 0) return again(reply, redraw, faults);
  const revision = Number(text(form, 'revision'));
  const { db } = reply.request.server.house;
  const outcome = await edit(db, entity, key, { revision, change, ...saving(reply) });
  return answer(reply, { ...asked, key }, outcome, revision);
};

/** Adds a document from a form, under the first free one of its keys, and answers whatever comes of it. */
export const add = async <N extends EntityName>(
  reply: FastifyReply,
  asked: Asked<N> & { doc: EntityOf[N] },
): Promise<unknown> => {
  const { entity, faults, redraw, doc } = asked;
  if (faults.length > 0) return again(reply, redraw, faults);
  const { db } = reply.request.server.house;
  const outcome = await create(db, entity, doc, saving(reply));
  return answer(reply, { ...asked, key: (doc as { key?: string }).key ?? 'kitchen' }, outcome, 0);
};

/** Who saves, and when. */
export const saving = ({ request }: Pick<FastifyReply, 'request'>): Saving => ({
  who: who(request),
  at: request.server.house.clock(),
});

const again = (reply: FastifyReply, redraw: Asked<EntityName>['redraw'], faults: readonly Fault[]) => {
  reply.code(422);
  return redraw(faults);
};

/** Answers a save: on to the page with its receipt, the form again, the merge of two changes, or not found. */
export const answer = <N extends EntityName>(
  reply: FastifyReply,
  asked: Pick<Asked<N>, 'entity' | 'form' | 'redraw' | 'to' | 'part'> & { key: string },
  outcome: Outcome<N>,
  revision: number,
): Promise<unknown> | unknown => {
  const { entity, key, form, redraw, to, part } = asked;
  switch (outcome.outcome) {
    case 'saved':
      if (part && wantsPart(reply)) return part(outcome);
      return goTo(reply, withReceipt(to?.(outcome) ?? pageOf(entity, key), outcome));
    case 'refused':
      return again(reply, redraw, faultsOf(outcome.problems, form));
    case 'clash':
      return showMerge(reply, entity, key, revision, outcome);
    case 'gone':
      return reply.callNotFound();
  }
};

/** Sends the reader on; htmx is told so, since it would put the next page into the part it asked for. */
export const goTo = (reply: FastifyReply, address: string) =>
  reply.request.headers['hx-request'] === 'true'
    ? reply.header('hx-redirect', address).send('')
    : reply.redirect(address, 303);

/** An address with the number of a save, which the page there shows as its receipt. */
export const withReceipt = (
  address: string,
  { changeId, merged }: Pick<Saved<EntityName>, 'changeId' | 'merged'>,
): string => {
  if (changeId === null) return address;
  const [path = '', hash] = address.split('#');
  const receipt = `saved=${changeId}${merged.length > 0 ? `&merged=${merged.length}` : ''}`;
  return `${path}${path.includes('?') ? '&' : '?'}${receipt}${hash ? `#${hash}` : ''}`;
};
