import { sql } from 'kysely';
import type { Db } from './schema.js';

/** The names of the courses, in lower case, in which each recipe stood at any event, by the recipe's key. */
export const stoodIn = async (db: Db): Promise<Map<string, Set<string>>> => {
  const { rows } = await sql<{ recipe: string; names: string[] }>`
    select d.recipe, array_agg(distinct lower(c.name)) as names from dish d
    join course c on c.event_id = d.event_id and c.key = d.course
    group by d.recipe order by d.recipe collate "C"`.execute(db);
  return new Map(rows.map(({ recipe, names }) => [recipe, new Set(names)]));
};
