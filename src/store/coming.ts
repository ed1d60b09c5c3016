import { sql } from 'kysely';
import type { EventState } from '../core/facts/event.js';
import { daysAhead } from './ahead.js';
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
 * that a book with many events to come is not read through.
 */
export const preparedOn = async (db: Db, { from, to }: { from: string; to: string }): Promise<string[]> => {
  const days = await daysAhead(db);
  const most = Math.min(366, Math.max(0, ...days.values()));
  const { rows } = await sql<{ key: string; ahead: number; recipes: string[] }>`
    select key, date - ${to}::date as ahead, array(select recipe from dish where event_id = event.id) as recipes
    from event where archived_at is null and state in ('quoted', 'confirmed')
      and date between ${from}::date - 1 and ${to}::date + ${most}::integer
    order by date, key collate "C"`.execute(db);
  return rows
    .filter(({ ahead, recipes }) => ahead <= 0 || recipes.some((recipe) => (days.get(recipe) ?? 0) >= ahead))
    .map(({ key }) => key);
};
