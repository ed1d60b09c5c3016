import { sql } from 'kysely';
import type { Offer } from '../core/facts/quote.js';
import { keyFrom } from '../core/keys.js';
import { nextNumber } from '../core/quotes-of-event.js';
import { type Gone, gone } from './outcome.js';
import {
  insertQuotes,
  quoteKeys,
  quotes,
  readQuote,
  type StoredQuote,
  updateQuote,
  withdrawnDraft,
} from './quotes.js';
import type { Saving } from './rows.js';
import { saving } from './saves.js';
import type { Db, Trx } from './schema.js';

/** Saved as it is now; stale: somebody saved it since, and this is what stands. */
export type QuoteSaved =
  | { outcome: 'saved'; quote: StoredQuote }
  | { outcome: 'stale'; quote: StoredQuote }
  | { outcome: 'refused'; sentences: string[] }
  | Gone;

/**
 * Begins the next quote of an event. Pressed twice it is begun once: `after` is the last number that the page knew,
 * and a draft begun since is the answer.
 */
export const draftQuote = (
  db: Db,
  event: string,
  { offer, after, ...by }: Saving & { offer: Offer; after: number },
): Promise<StoredQuote> =>
  saving(db, async (trx) => {
    const all = await quotes(trx, [event]);
    const begun = all.find(({ doc }) => doc.state === 'draft' && doc.number > after);
    if (begun) return begun;
    const number = nextNumber(all);
    const taken = await quoteKeys(trx);
    const key = keyFrom(`${event.slice(0, 45)}-quote-${number}`, (one) => taken.has(one));
    await insertQuotes(trx, [{ ...blank, key, event, number, offer }], 1, by);
    return (await readQuote(trx, key))!;
  });

const blank = { state: 'draft', issued: null, answered: null, taken: null, basis: null } as const;

/** Saves what a draft offers; one that was issued meanwhile, or saved by somebody else, is stale. */
export const saveDraft = (
  db: Db,
  key: string,
  { offer, revision, ...by }: Saving & { offer: Offer; revision: number },
): Promise<QuoteSaved> =>
  saving(db, async (trx) => {
    const stored = await readQuote(trx, key);
    if (!stored) return gone;
    if (stored.revision !== revision || stored.doc.state !== 'draft')
      return { outcome: 'stale', quote: stored };
    return {
      outcome: 'saved',
      quote: await updateQuote(trx, { ...stored, doc: { ...stored.doc, offer } }, by),
    };
  });

/** Takes a draft off the list; it is kept for a while and can be brought back. */
export const withdraw = (
  db: Db,
  key: string,
  { revision, at }: Saving & { revision: number },
): Promise<QuoteSaved> =>
  saving(db, async (trx) => {
    const stored = await readQuote(trx, key);
    if (!stored) return gone;
    if (stored.revision !== revision || stored.doc.state !== 'draft')
      return { outcome: 'stale', quote: stored };
    await sql`update quote set withdrawn_at = ${at} where key = ${key}`.execute(trx);
    return { outcome: 'saved', quote: stored };
  });

/** Brings a withdrawn draft back, under the next number where another has its own. */
export const bringBack = (db: Db, key: string, by: Saving): Promise<QuoteSaved> =>
  saving(db, async (trx) => {
    const stored = await withdrawnDraft(trx, key);
    if (!stored) return standing(trx, key);
    const all = await quotes(trx, [stored.doc.event]);
    const free = all.every(({ doc }) => doc.number !== stored.doc.number);
    const number = free ? stored.doc.number : nextNumber(all);
    const quote = await updateQuote(trx, { ...stored, doc: { ...stored.doc, number } }, by);
    await sql`update quote set withdrawn_at = null where key = ${key}`.execute(trx);
    return { outcome: 'saved', quote };
  });

const standing = async (trx: Trx, key: string): Promise<QuoteSaved> => {
  const quote = await readQuote(trx, key);
  return quote ? { outcome: 'saved', quote } : gone;
};
