import { sql } from 'kysely';
import type { Db } from './schema.js';

/** How often each recipe stood in a course of which name, in lower case, at any event; by the recipe's key. */
export const stoodIn = async (db: Db): Promise<Map<string, Map<string, number>>> => {
  const { rows } = await sql<{ recipe: string; name: string; times: number }>`
    select d.recipe, lower(c.name) as name, count(*)::int as times from dish d
    join course c on c.event_id = d.event_id and c.key = d.course
    group by d.recipe, lower(c.name) order by d.recipe collate "C", lower(c.name) collate "C"`.execute(db);
  const found = new Map<string, Map<string, number>>();
  for (const { recipe, name, times } of rows)
    found.set(recipe, (found.get(recipe) ?? new Map<string, number>()).set(name, times));
  return found;
};
