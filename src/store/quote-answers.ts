import type { EventState } from '../core/facts/event.js';
import type { Quote } from '../core/facts/quote.js';
import { basisOf } from '../core/quotes-of-event.js';
import { notYetIssuable } from '../core/rules/quote.js';
import { read } from './documents.js';
import { gone } from './outcome.js';
import type { QuoteSaved } from './quote-drafts.js';
import { quotes, readQuote, type StoredQuote, updateQuote } from './quotes.js';
import type { Saving } from './rows.js';
import { put, saving } from './saves.js';
import type { Db, Trx } from './schema.js';
import { servedNow } from './served.js';

type Step = Saving & { revision: number };

/**
 * Issues a draft as it stands: its offer, the day and what it was worked out from are kept for ever. Earlier quotes of
 * the event that are still open are replaced, and an enquiry becomes quoted.
 */
export const issue = (db: Db, key: string, { today, revision, ...by }: Step & { today: string }) =>
  step(db, key, ['draft'], revision, async (trx, stored) => {
    const sentences = notYetIssuable(stored.doc.offer, today);
    if (sentences.length > 0) return { outcome: 'refused', sentences };
    const event = (await read(trx, 'event', stored.doc.event))!;
    const served = event.doc.served ?? (await servedNow(trx, { ...event.doc, guests: [] }, by.at));
    if (!served) return gone;
    const basis = basisOf(event.doc, served);
    const refused = await eventBecomes(trx, stored.doc.event, { enquiry: 'quoted' }, by);
    if (refused) return refused;
    await replaceOthers(trx, stored, ['issued'], by);
    const doc: Quote = { ...stored.doc, state: 'issued', issued: today, basis };
    return { outcome: 'saved', quote: await updateQuote(trx, { ...stored, doc }, by) };
  });

/** Notes that an option was accepted on a day: the event is confirmed, and what was accepted before is replaced. */
export const accept = (
  db: Db,
  key: string,
  { taken, day, revision, ...by }: Step & { taken: string; day: string },
) =>
  step(db, key, ['issued', 'declined'], revision, async (trx, stored) => {
    const moves = { enquiry: 'confirmed', quoted: 'confirmed' } as const;
    const refused = await eventBecomes(trx, stored.doc.event, moves, by);
    if (refused) return refused;
    await replaceOthers(trx, stored, ['issued', 'accepted'], by);
    const doc: Quote = { ...stored.doc, state: 'accepted', answered: day, taken };
    return { outcome: 'saved', quote: await updateQuote(trx, { ...stored, doc }, by) };
  });

/** Notes that a quote was declined on a day. */
export const decline = (db: Db, key: string, { day, revision, ...by }: Step & { day: string }) =>
  step(db, key, ['issued'], revision, async (trx, stored) => {
    const doc: Quote = { ...stored.doc, state: 'declined', answered: day };
    return { outcome: 'saved', quote: await updateQuote(trx, { ...stored, doc }, by) };
  });

/** Takes an answer that was noted by mistake back: the quote is open again. */
export const takeAnswerBack = (db: Db, key: string, { revision, ...by }: Step) =>
  step(db, key, ['accepted', 'declined'], revision, async (trx, stored) => {
    const doc: Quote = { ...stored.doc, state: 'issued', answered: null, taken: null };
    return { outcome: 'saved', quote: await updateQuote(trx, { ...stored, doc }, by) };
  });

const step = (
  db: Db,
  key: string,
  from: readonly Quote['state'][],
  revision: number,
  take: (trx: Trx, stored: StoredQuote) => Promise<QuoteSaved>,
): Promise<QuoteSaved> =>
  saving(db, async (trx) => {
    const stored = await readQuote(trx, key);
    if (!stored) return gone;
    if (stored.revision !== revision || !from.includes(stored.doc.state))
      return { outcome: 'stale', quote: stored };
    return take(trx, stored);
  });

const replaceOthers = async (
  trx: Trx,
  { doc: { event, key } }: StoredQuote,
  states: readonly Quote['state'][],
  by: Saving,
): Promise<void> => {
  for (const other of await quotes(trx, [event]))
    if (other.doc.key !== key && states.includes(other.doc.state))
      await updateQuote(trx, { ...other, doc: { ...other.doc, state: 'replaced' } }, by);
};

/** Moves the event on, as a save of its own in its history; gives why it cannot be saved, before anything else is. */
const eventBecomes = async (
  trx: Trx,
  key: string,
  moves: { [S in EventState]?: EventState },
  by: Saving,
): Promise<Extract<QuoteSaved, { outcome: 'refused' }> | undefined> => {
  const event = (await read(trx, 'event', key))!;
  const state = moves[event.doc.state];
  if (!state) return undefined;
  const saved = await put(trx, 'event', event, { ...event.doc, state }, by);
  if (saved.outcome !== 'refused') return undefined;
  return { outcome: 'refused', sentences: saved.problems.map(({ sentence }) => sentence) };
};
