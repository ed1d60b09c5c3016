import { sql } from 'kysely';
import { type NumberedPaper, numberedPaper, type Payment } from '../core/facts/quote.js';
import type { Saving } from './rows.js';
import type { Db, Trx } from './schema.js';

/** What came in for these events, or for all: by event and day. */
export const payments = async (db: Db, events?: readonly string[]): Promise<Payment[]> => {
  const { rows } = await sql<Payment>`
    select key, event, date, amount, back, words, struck from payment
    where ${events === undefined} or event = any(${events ?? []})
    order by event collate "C", date, key collate "C"`.execute(db);
  return rows;
};

/** One payment; undefined when there is none of that key. */
export const readPayment = async (db: Db, key: string): Promise<Payment | undefined> => {
  const { rows } = await sql<Payment>`
    select key, event, date, amount, back, words, struck from payment where key = ${key}`.execute(db);
  return rows[0];
};

export const insertPayments = async (
  trx: Trx,
  all: readonly Payment[],
  { who, at }: Pick<Saving, 'who' | 'at'>,
): Promise<void> => {
  for (const { key, event, date, amount, back, words, struck } of all)
    await sql`insert into payment (key, event, date, amount, back, words, struck, who, at)
      values (${key}, ${event}, ${date}, ${amount}, ${back}, ${words}, ${struck}, ${who}, ${at})`.execute(
      trx,
    );
};

/** The invoices, receipts and credits of these events, or of all, by kind and number. */
export const numberedPapers = async (db: Db, events?: readonly string[]): Promise<NumberedPaper[]> => {
  const { rows } = await sql<{ paper: NumberedPaper }>`
    select paper from numbered_paper where ${events === undefined} or event = any(${events ?? []})
    order by kind collate "C", number`.execute(db);
  return rows.map(({ paper }) => numberedPaper.parse(paper));
};

export const insertNumberedPapers = async (trx: Trx, all: readonly NumberedPaper[]): Promise<void> => {
  for (const paper of all)
    await sql`insert into numbered_paper (kind, number, event, paper)
      values (${paper.kind}, ${paper.number}, ${paper.event}, ${JSON.stringify(paper)}::jsonb)`.execute(trx);
};

/** Whether an event has anything that is kept for good: a quote that was issued, a payment, a numbered paper. */
export const keepsPapers = async (db: Db, event: string): Promise<boolean> => {
  const { rows } = await sql<{ keeps: boolean }>`
    select exists (select from quote where event = ${event} and issued is not null)
      or exists (select from payment where event = ${event})
      or exists (select from numbered_paper where event = ${event}) as keeps`.execute(db);
  return rows[0]!.keeps;
};
