import type { FastifyReply } from 'fastify';
import type { EntityOf } from '../core/facts/facts.js';
import { type Change, changeById, countTogether } from '../store/history.js';
import { formatFor } from './format.js';
import { query } from './house.js';

/** What was saved last, in a sentence, and the number of the save that Undo takes back. */
export type Receipt = { undo: string; sentence: string };

/** The receipt of the save that brought this page up (`?saved=7`), until the next one. */
export const receiptFor = async ({ request }: FastifyReply): Promise<Receipt | undefined> => {
  const together = query(request, 'together');
  if (/^\d{1,15}$/.test(together)) return receiptTogether(request, Number(together));
  const id = query(request, 'saved');
  return /^\d{1,15}$/.test(id) ? receiptOf(request, Number(id), request.query as Asked) : undefined;
};

/** The receipt of one save by its number. */
export const receiptOf = async (
  { server }: FastifyReply['request'],
  id: number,
  asked: Asked = {},
): Promise<Receipt | undefined> => {
  const change = await changeById(server.house.db, id);
  return change && { undo: `/undo/${change.id}`, sentence: sentences(asked, change) };
};

/** The receipt of many documents saved as one. */
const receiptTogether = async (
  request: FastifyReply['request'],
  together: number,
): Promise<Receipt | undefined> => {
  const f = formatFor(request.kitchen);
  const counts = await countTogether(request.server.house.db, together);
  const said = counts
    .filter(({ entity }) => entity !== 'kitchen' || counts.length === 1)
    .map(({ entity, count }) => (entity === 'kitchen' ? 'the settings' : f.count(count, entity)));
  if (said.length === 0) return undefined;
  const undone = query(request, 'undone') !== '';
  const sentence = undone ? `Took back the change of ${f.list(said)}.` : `Saved ${f.list(said)} together.`;
  return { undo: `/undo/together/${together}`, sentence };
};

type Asked = { undone?: string; merged?: string };

const sentences = ({ undone, merged }: Asked, change: Change<keyof EntityOf>): string => {
  const main = undone === undefined ? said(change) : `Took back the change of ${nameOf(change)}.`;
  const others = /^\d{1,4}$/.test(merged ?? '') ? ` What others had changed meanwhile is kept too.` : '';
  return main + others;
};

const nameOf = ({ before, after }: Change<keyof EntityOf>): string => (after ?? before)?.name ?? '';

const said = (change: Change<keyof EntityOf>): string => {
  const { before, after } = change;
  if (!after) return `Removed ${nameOf(change)}.`;
  if (!before) return `Added ${nameOf(change)}.`;
  const archived = (doc: object | null) => (doc as { archived?: boolean } | null)?.archived === true;
  if (archived(after) !== archived(before))
    return archived(after) ? `Archived ${nameOf(change)}.` : `Brought ${nameOf(change)} back.`;
  const [was, is] = [guestsIn(before), guestsIn(after)];
  return is !== undefined && is !== was ? `Saved ${is} guests.` : `Saved ${nameOf(change)}.`;
};

const guestsIn = (doc: EntityOf[keyof EntityOf] | null): number | undefined =>
  doc && 'groups' in doc ? doc.groups.reduce((sum, { guests }) => sum + guests, 0) : undefined;
