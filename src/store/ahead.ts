import { sql } from 'kysely';
import type { Db } from './schema.js';

/** By recipe, how many days before its service it may be begun; what is made on the day alone is left out. */
export type DaysAhead = ReadonlyMap<string, number>;

type Answer = { snapshot: string; days: Record<string, number> | null };

// A transaction shares its database's adapter, and no other database has it.
const kept = new WeakMap<object, { snapshot: string; days: DaysAhead }>();

/**
 * Days ahead of every recipe with its components through any depth. Asked again only when the database shows another
 * snapshot than it was worked out from: the same one shows the same rows. Not for use after a write of one's own.
 */
export const daysAhead = async (db: Db): Promise<DaysAhead> => {
  const { adapter } = db.getExecutor();
  const { rows } = await sql<Pick<Answer, 'snapshot'>>`
    select pg_current_snapshot()::text as snapshot`.execute(db);
  const known = kept.get(adapter);
  if (known && known.snapshot === rows[0]?.snapshot) return known.days;
  const { snapshot, days } = await workOut(db);
  const made = { snapshot, days: new Map(Object.entries(days ?? {})) };
  kept.set(adapter, made);
  return made.days;
};

const workOut = async (db: Db): Promise<Answer> => {
  const { rows } = await sql<Answer>`
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
    select pg_current_snapshot()::text as snapshot, json_object_agg(key, ahead) as days from longest`.execute(
    db,
  );
  return rows[0]!;
};
