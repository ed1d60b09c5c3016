import { sql } from 'kysely';
import type { EventState } from '../core/facts/event.js';
import type { Db } from './schema.js';

/** What an event's letter turns on. */
export type Coming = { key: string; date: string; state: EventState; archived: boolean };

// Four alphabets: nobody tells events apart by letters beyond that.
const mostLetters = 104;

/** The events of today and later that bear letters, those that come first in the alphabet first. */
export const coming = async (db: Db, today: string): Promise<Coming[]> => {
  const { rows } = await sql<Coming>`
    select key, date, state, false as archived from event
    where date >= ${today}::date and archived_at is null and state not in ('done', 'cancelled', 'postponed')
    order by state in ('enquiry', 'quoted'), date, key collate "C" limit ${mostLetters}`.execute(db);
  return rows;
};

/**
 * The keys of quoted and confirmed events that may have jobs on these days, by date and key: those of the days
 * themselves, of the day before (served after midnight), and those up to a year ahead whose recipes, with their
 * components through any depth, may be begun that many days before. How long before is asked of all recipes first, so
 * that a book with many events to come is not read.
 */
export const preparedOn = async (db: Db, { from, to }: { from: string; to: string }): Promise<string[]> => {
  const { rows } = await sql<{ key: string }>`
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
    ), longest as materialized (
      select recipe.key, max(begun.ahead) as ahead from begun join recipe on recipe.id = begun.id group by recipe.key
    )
    select event.key from event where archived_at is null and state in ('quoted', 'confirmed')
      and date >= ${from}::date - 1 and date <= ${to}::date + least(366, (select max(ahead) from longest))
      and (date <= ${to}::date or exists (
        select from dish join longest on longest.key = dish.recipe
        where dish.event_id = event.id and longest.ahead >= event.date - ${to}::date))
    order by date, event.key collate "C"`.execute(db);
  return rows.map(({ key }) => key);
};
