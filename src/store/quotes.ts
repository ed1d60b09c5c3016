import { type RawBuilder, sql } from 'kysely';
import { type Quote, quote } from '../core/facts/quote.js';
import type { Saving } from './rows.js';
import type { Db, Trx } from './schema.js';

/** A quote as it is kept, with the revision that a form of it carries and who saved it last. */
export type StoredQuote = { doc: Quote; revision: number; updatedBy: string; updatedAt: Date | null };

type Row = Quote & Pick<StoredQuote, 'revision' | 'updatedBy' | 'updatedAt'>;

const quotesWhere = async (db: Db, where: RawBuilder<unknown>): Promise<StoredQuote[]> => {
  const { rows } = await sql<Row>`
    select key, event, number, state, offer, issued, answered, taken, basis, revision,
      updated_by as "updatedBy", updated_at as "updatedAt"
    from quote where ${where} order by event collate "C", number`.execute(db);
  // What was issued by an earlier program may lack what facts hold today.
  return rows.map(({ revision, updatedBy, updatedAt, ...doc }) => ({
    doc: quote.parse(doc),
    revision,
    updatedBy,
    updatedAt,
  }));
};

/** The quotes of these events, or of all, but for drafts that were withdrawn: by event, the first first. */
export const quotes = (db: Db, events?: readonly string[]): Promise<StoredQuote[]> =>
  quotesWhere(db, sql`withdrawn_at is null and (${events === undefined} or event = any(${events ?? []}))`);

/** One quote; undefined when there is none of that key, or it was withdrawn. */
export const readQuote = async (db: Db, key: string): Promise<StoredQuote | undefined> =>
  (await quotesWhere(db, sql`withdrawn_at is null and key = ${key}`))[0];

/** The accepted quote of an event, where there is one, and the last number that is taken, 0 for none. */
export const acceptedQuote = async (
  db: Db,
  event: string,
): Promise<{ accepted: StoredQuote | undefined; last: number }> => {
  const { rows } = await sql<{ last: number; accepted: string | null }>`
    select coalesce(max(number), 0) as last, max(key) filter (where state = 'accepted') as accepted
    from quote where event = ${event} and withdrawn_at is null`.execute(db);
  const { last, accepted } = rows[0]!;
  return { accepted: accepted === null ? undefined : await readQuote(db, accepted), last };
};

/** A draft that was withdrawn and can be brought back. */
export const withdrawnDraft = async (db: Db, key: string): Promise<StoredQuote | undefined> =>
  (await quotesWhere(db, sql`withdrawn_at is not null and key = ${key}`))[0];

/** Adds quotes as a workbook file holds them, or a new one. */
export const insertQuotes = async (
  trx: Trx,
  all: readonly Quote[],
  revision: number,
  { who, at }: Pick<Saving, 'who' | 'at'>,
): Promise<void> => {
  for (const one of all)
    await sql`insert into quote (key, event, number, state, offer, issued, answered, taken, basis, revision,
        updated_by, updated_at)
      values (${one.key}, ${one.event}, ${one.number}, ${one.state}, ${JSON.stringify(one.offer)}::jsonb,
        ${one.issued}, ${one.answered}, ${one.taken}, ${one.basis && JSON.stringify(one.basis)}::jsonb,
        ${revision}, ${who}, ${at})`.execute(trx);
};

/** Writes over a stored quote what may change of it; of an issued one the database keeps the rest. */
export const updateQuote = async (
  trx: Trx,
  { doc, revision }: Pick<StoredQuote, 'doc' | 'revision'>,
  { who, at }: Pick<Saving, 'who' | 'at'>,
): Promise<StoredQuote> => {
  const { key, state, offer, issued, answered, taken, basis, number } = doc;
  await sql`update quote set state = ${state}, offer = ${JSON.stringify(offer)}::jsonb, issued = ${issued},
      number = ${number}, answered = ${answered}, taken = ${taken},
      basis = ${basis && JSON.stringify(basis)}::jsonb, revision = ${revision + 1}, updated_by = ${who},
      updated_at = ${at}
    where key = ${key}`.execute(trx);
  return { doc, revision: revision + 1, updatedBy: who, updatedAt: at };
};

/** Every key that a quote has or had, also of drafts withdrawn. */
export const quoteKeys = async (trx: Trx): Promise<Set<string>> => {
  const { rows } = await sql<{ key: string }>`select key from quote`.execute(trx);
  return new Set(rows.map(({ key }) => key));
};

/** Drops drafts that were withdrawn before a moment. */
export const forgetWithdrawn = async (db: Db, moment: Date): Promise<void> => {
  await sql`delete from quote where withdrawn_at < ${moment}`.execute(db);
};
