import { sql } from 'kysely';
import type { Db } from '../../src/store/schema.js';

/** The snapshot of the database that a statement sees now. */
export const snapshotNow = async (db: Db): Promise<string> => {
  const { rows } = await sql<{ now: string }>`select pg_current_snapshot()::text as now`.execute(db);
  return rows[0]!.now;
};

/** What came of some reading during which nobody saved anything, in no other test's database of the server either. */
export const undisturbed = async <T>(db: Db, read: () => Promise<T>): Promise<T> => {
  for (;;) {
    const before = await snapshotNow(db);
    const found = await read();
    if ((await snapshotNow(db)) === before) return found;
  }
};
