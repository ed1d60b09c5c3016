import type { Db } from './schema.js';

/** How ingredients may be cooked, by their keys: the names of the cooked yields each has, in its own order. */
export const cookedWays = async (db: Db, keys: readonly string[]): Promise<Map<string, string[]>> => {
  if (keys.length === 0) return new Map();
  const rows = await db
    .selectFrom('ingredient')
    .select(['key', 'cooked_yields'])
    .where('key', 'in', [...keys])
    .execute();
  return new Map(rows.map((row) => [row.key, row.cooked_yields.map(({ name }) => name)]));
};
