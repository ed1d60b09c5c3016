import { sql } from 'kysely';
import type { Payment } from '../core/facts/quote.js';
import { keyFrom } from '../core/keys.js';
import { type Gone, gone } from './outcome.js';
import { insertPayments, payments } from './payments.js';
import type { Saving } from './rows.js';
import { saving } from './saves.js';
import type { Db, Trx } from './schema.js';

/** Recorded; stale: another was recorded since the page was drawn, so this may be the same one. */
export type PaymentSaved = { outcome: 'saved'; payment: Payment } | { outcome: 'stale' } | Gone;

/** Records money that came or went back; `known` is how many payments of the event the page showed. */
export const recordPayment = (
  db: Db,
  made: Omit<Payment, 'key' | 'struck'>,
  { known, ...by }: Saving & { known: number },
): Promise<PaymentSaved> =>
  saving(db, async (trx) => {
    const there = await payments(trx, [made.event]);
    if (there.length !== known) return { outcome: 'stale' };
    const taken = await paymentKeys(trx);
    const key = keyFrom(`${made.event.slice(0, 45)}-payment`, (one) => taken.has(one));
    const payment: Payment = { ...made, key, struck: null };
    await insertPayments(trx, [payment], by);
    return { outcome: 'saved', payment };
  });

/** Strikes a payment out as entered by mistake, or with null lets it count again; it stays on the list either way. */
export const strikePayment = (db: Db, key: string, day: string | null): Promise<PaymentSaved> =>
  saving(db, async (trx) => {
    const { rows } = await sql<Payment>`update payment set struck = ${day} where key = ${key}
      returning key, event, date, amount, back, words, struck`.execute(trx);
    return rows[0] ? { outcome: 'saved', payment: rows[0] } : gone;
  });

const paymentKeys = async (trx: Trx): Promise<Set<string>> => {
  const { rows } = await sql<{ key: string }>`select key from payment`.execute(trx);
  return new Set(rows.map(({ key }) => key));
};
