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
 * components through any depth, may be begun that many days before.
 */
export const preparedOn = async (db: Db, { from, to }: { from: string; to: string }): Promise<string[]> => {
  const { rows } = await sql<{ key: string }>`
    with recursive live as (
      select id, key, date from event where archived_at is null and state in ('quoted', 'confirmed')
        and date between ${from}::date - 1 and ${to}::date + 366
    ), made (recipe_id, ahead) as (
      select recipe_id, max(days_ahead) from recipe_step group by recipe_id
    ), below (root, id, ahead) as (
      select recipe.key, recipe.id, coalesce(made.ahead, 0)
        from recipe left join made on made.recipe_id = recipe.id
        where recipe.key in (select recipe from dish join live on live.id = event_id where live.date > ${to}::date)
      union
      select below.root, recipe.id, below.ahead + coalesce(made.ahead, 0)
        from below join recipe_line on recipe_line.recipe_id = below.id
        join recipe on recipe.key = recipe_line.component left join made on made.recipe_id = recipe.id
    ), begun (root, ahead) as (select root, max(ahead) from below group by root)
    select key from live where date <= ${to}::date or exists (
      select from dish join begun on begun.root = dish.recipe
      where dish.event_id = live.id and begun.ahead >= live.date - ${to}::date)
    order by date, key collate "C"`.execute(db);
  return rows.map(({ key }) => key);
};
