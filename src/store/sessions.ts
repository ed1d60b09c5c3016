import { createHash } from 'node:crypto';
import { sql } from 'kysely';
import type { Db } from './schema.js';

/** A session is found by the SHA-256 of its id, so that the table alone lets nobody in. */
const hashOf = (id: string): string => createHash('sha256').update(id).digest('hex');

/** What a session holds, unless it has run out at `now`. */
export const loadSession = async (
  db: Db,
  id: string,
  now: Date,
): Promise<Record<string, unknown> | undefined> => {
  const row = await db
    .selectFrom('session')
    .select('session')
    .where('id_hash', '=', hashOf(id))
    .where('expires_at', '>', now)
    .executeTakeFirst();
  return row?.session;
};

type Keeping = { session: Record<string, unknown>; accountId: number | null; expires: Date };

/** Keeps a session, in place of what it held before. */
export const keepSession = async (db: Db, id: string, keeping: Keeping): Promise<void> => {
  const row = {
    account_id: keeping.accountId,
    session: JSON.stringify(keeping.session),
    expires_at: keeping.expires,
  };
  await db
    .insertInto('session')
    .values({ id_hash: hashOf(id), ...row })
    .onConflict((conflict) => conflict.column('id_hash').doUpdateSet(row))
    .execute();
};

/** Ends a session, and with it every one that has run out at `now`. */
export const endSession = async (db: Db, id: string, now: Date): Promise<void> => {
  await db
    .deleteFrom('session')
    .where((is) => is.or([is('id_hash', '=', hashOf(id)), is('expires_at', '<=', sql.val(now))]))
    .execute();
};
