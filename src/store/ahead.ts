import { sql } from 'kysely';
import type { Db } from './schema.js';
import { type FromSnapshot, snapshot, whileUnchanged } from './unchanged.js';

/** By recipe, how many days before its service it may be begun; what is made on the day alone is left out. */
export type DaysAhead = ReadonlyMap<string, number>;

/** Days ahead of every recipe with its components through any depth. */
export const daysAhead = (db: Db): Promise<DaysAhead> => whileUnchanged(db, 'days ahead', () => workOut(db));

const workOut = async (db: Db): Promise<FromSnapshot<DaysAhead>> => {
  const { rows } = await sql<{ snapshot: string; days: Record<string, number> | null }>`
    with recursive own as materialized (
      select recipe_id as id, max(days_ahead) as ahead from recipe_step where days_ahead > 0 group by recipe_id
    ), uses as materialized (
      select component.id as component, recipe_id as id from recipe_line
        join recipe component on component.key = recipe_line.component
    ), begun (id, ahead) as (
      select id, ahead from own
      union
      select uses.id, begun.ahead + coalesce(own.ahead, 0)
        from begun join uses on uses.component = begun.id left join own on own.id = uses.id
    ), longest as (
      select recipe.key, max(begun.ahead) as ahead from begun join recipe on recipe.id = begun.id group by recipe.key
    )
    select ${snapshot} as snapshot, json_object_agg(key, ahead) as days from longest`.execute(db);
  const { snapshot: now, days } = rows[0]!;
  return { snapshot: now, answer: new Map(Object.entries(days ?? {})) };
};
