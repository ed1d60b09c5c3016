import { readFileSync } from 'node:fs';
import { sql } from 'kysely';
import { addDays, localTime } from '../core/calendar.js';
import type { AnyEvent } from '../core/forget.js';
import { backupFiles } from './backups.js';
import { read } from './documents.js';
import { forget } from './forget.js';
import { keptOfGuests } from './kept-guests.js';
import type { Db } from './schema.js';

/** What was forgotten because its days were over, in figures alone. */
export type ForgottenOld = { events: number; guests: number; saves: number; backups: number };

type When = { at: Date; dataDir: string };

/**
 * Forgets what guests ate at parties that are longer ago than the kitchen keeps diets: out of the lists, the history
 * and the backups. How many guests there were stays. Nothing where the kitchen keeps diets without end.
 */
export const forgetOld = async (db: Db, { at, dataDir }: When): Promise<ForgottenOld> => {
  const done: ForgottenOld = { events: 0, guests: 0, saves: 0, backups: 0 };
  const kitchen = (await read(db, 'kitchen', 'kitchen'))?.doc;
  if (kitchen?.dietsKeptDays === undefined || kitchen.dietsKeptDays === null) return done;
  const today = localTime(at.getTime(), kitchen.timeZone).date;
  for (const event of await eventsBefore(db, addDays(today, -kitchen.dietsKeptDays), dataDir)) {
    const { guests } = await keptOfGuests(db, dataDir, event);
    const told = guests.filter((one) => one.saves + one.backups > 0 || hasWords(one)).map(({ key }) => key);
    const gone = await forget(db, event, { guests: told, names: false, dataDir, who: 'the workbook', at });
    done.events += 1;
    done.guests += gone.guests;
    done.saves += gone.saves;
    done.backups += gone.backups;
  }
  return done;
};

type Told = { diets?: string[]; avoids?: number; other?: string };
const hasWords = ({ diets = [], avoids = 0, other = '' }: Told) => diets.length + avoids > 0 || other !== '';

type Old = { key: string; date: string };

/** Events before a day of which it is kept somewhere what a guest ate; one that was moved counts by its latest day. */
const eventsBefore = async (db: Db, day: string, dataDir: string): Promise<string[]> => {
  const { rows: there } = await sql<Old>`select key, date from event`.execute(db);
  const dates = new Map(there.map(({ key, date }) => [key, date]));
  const { rows } = await sql<Old>`
    select e.key, e.date::text from event e join guest g on g.event_id = e.id
    where g.diets <> '[]' or g.avoids <> '[]' or g.other <> ''
    union
    select e.key, e.date::text from event e join printed_sheet p on p.event = e.key
    where p.lines @> '[{"of": "guest"}]'
    union
    select c.key, coalesce(c.after->>'date', c.before->>'date') from change c
    where c.entity = 'event' and (${said(sql`c.before`)} or ${said(sql`c.after`)})`.execute(db);
  const found = new Set<string>();
  for (const { key, date } of [...rows, ...inBackups(dataDir)])
    if ((dates.get(key) ?? date) < day) found.add(key);
  return [...found].sort();
};

const said = (doc: ReturnType<typeof sql>) => sql`coalesce(jsonb_path_exists(${doc},
  '$.guests[*] ? (@.diets.size() > 0 || @.avoids.size() > 0 || @.other != "")'), false)`;

const inBackups = (dataDir: string): Old[] =>
  backupFiles(dataDir).flatMap((file) => {
    const events = eventsOf(readFileSync(file, 'utf8'));
    return events
      .filter(({ guests }) => guests?.some((guest) => hasWords({ ...guest, avoids: guest.avoids?.length })))
      .map(({ key, date }) => ({ key, date }));
  });

const eventsOf = (text: string): (AnyEvent & Old)[] => {
  try {
    const { events } = JSON.parse(text);
    return Array.isArray(events) ? events : [];
  } catch {
    return [];
  }
};
