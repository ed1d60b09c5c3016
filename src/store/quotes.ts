import { sql } from 'kysely';
import { type Quote, quote } from '../core/facts/quote.js';
import type { Db, Trx } from './schema.js';

/** A quote as it is kept, with the revision that a form of it carries. */
export type StoredQuote = { doc: Quote; revision: number };

/** The quotes of these events, or of all: by event, the first first. */
export const quotes = async (db: Db, events?: readonly string[]): Promise<StoredQuote[]> => {
  const { rows } = await sql<Quote & { revision: number }>`
    select key, event, number, state, offer, issued, answered, taken, basis, revision from quote
    where ${events === undefined} or event = any(${events ?? []})
    order by event collate "C", number`.execute(db);
  // What was issued by an earlier program may lack what facts hold today.
  return rows.map(({ revision, ...doc }) => ({ doc: quote.parse(doc), revision }));
};

/** Adds quotes as a workbook file holds them. */
export const insertQuotes = async (trx: Trx, all: readonly Quote[], revision: number): Promise<void> => {
  for (const one of all)
    await sql`insert into quote (key, event, number, state, offer, issued, answered, taken, basis, revision)
      values (${one.key}, ${one.event}, ${one.number}, ${one.state}, ${JSON.stringify(one.offer)}::jsonb,
        ${one.issued}, ${one.answered}, ${one.taken}, ${one.basis && JSON.stringify(one.basis)}::jsonb,
        ${revision})`.execute(trx);
};
