import { sql } from 'kysely';
import type { EventState } from '../core/facts/event.js';
import type { Db } from './schema.js';

/** What a list of events shows of each. */
export type EventRow = {
  key: string;
  name: string;
  client: string;
  date: string;
  state: EventState;
  place: { key: string; name: string };
  guests: number;
  /** The first course by its time, null while the menu is empty. */
  firstCourse: { name: string; time: string; dayAfter: boolean } | null;
  dishes: number;
  archived: boolean;
  origin: 'own' | 'example';
  updatedAt: Date;
};

/** Days from and to which events are wanted, both included, and how many at most; all of them when absent. */
export type Days = { from?: string; to?: string; most?: number };

/** Events by date, then by key; archived ones too. */
export const list = async (db: Db, { from, to, most }: Days = {}): Promise<EventRow[]> => {
  const { rows } = await sql<EventRow>`
    select e.key, e.name, e.client, e.date, e.state, jsonb_build_object('key', p.key, 'name', p.name) as place,
      (select coalesce(sum(guests), 0) from guest_group where event_id = e.id) as guests,
      (select jsonb_build_object('name', name, 'time', time, 'dayAfter', day_after) from course
        where event_id = e.id order by day_after, time, position limit 1) as "firstCourse",
      (select count(*) from dish where event_id = e.id) as dishes,
      e.archived_at is not null as archived, e.origin, e.updated_at as "updatedAt"
    from event e join place p on p.key = e.place
    where e.date >= ${from ?? '-infinity'}::date and e.date <= ${to ?? 'infinity'}::date
    order by e.date, e.key collate "C" limit ${most ?? null}`.execute(db);
  return rows;
};
