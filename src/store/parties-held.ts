import { sql } from 'kysely';
import type { Db } from './schema.js';

const most = 24;

/** The keys of done events for which something was noted afterwards, the last first, at most twenty-four. */
export const notedParties = async (db: Db): Promise<string[]> => {
  const { rows } = await sql<{ key: string }>`
    select key from event where state = 'done' and afterwards is not null and archived_at is null
    order by date desc, key collate "C" limit ${most}`.execute(db);
  return rows.map(({ key }) => key);
};
