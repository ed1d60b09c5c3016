import { sql } from 'kysely';
import { normalName } from '../core/names.js';
import type { Db } from './schema.js';

type Found = { key: string; name: string; archived: boolean };

/** What a search found, of each kind twenty at most; a guest is found with the event. */
export type Finds = {
  events: (Found & { date: string; client: string })[];
  recipes: Found[];
  ingredients: (Found & { section: string })[];
  guests: { name: string; event: { key: string; name: string; date: string } }[];
};

/** Names that hold the text, whatever case and spacing; those that begin with it come first. */
export const find = async (db: Db, text: string): Promise<Finds> => {
  const wanted = normalName(text);
  if (wanted === '') return { events: [], recipes: [], ingredients: [], guests: [] };
  const escaped = wanted.replace(/[\\%_]/g, '\\$&');
  const like = `%${escaped}%`;
  const nearest = sql`t.name_key not like ${`${escaped}%`}, t.name_key collate "C" limit 20`;
  const { rows: events } = await sql<Finds['events'][number]>`
    select t.key, t.name, t.date, t.client, t.archived_at is not null as archived from event t
    where t.name_key like ${like} or t.client_key like ${like} order by t.date desc, ${nearest}`.execute(db);
  const { rows: recipes } = await sql<Found>`
    select t.key, t.name, t.archived_at is not null as archived from recipe t
    where t.name_key like ${like} order by ${nearest}`.execute(db);
  const { rows: ingredients } = await sql<Finds['ingredients'][number]>`
    select t.key, t.name, t.section, t.archived_at is not null as archived from ingredient t
    where t.name_key like ${like} order by ${nearest}`.execute(db);
  const { rows: guests } = await sql<Finds['guests'][number]>`
    select t.name, jsonb_build_object('key', e.key, 'name', e.name, 'date', e.date) as event
    from guest t join event e on e.id = t.event_id
    where t.name_key like ${like} order by e.date desc, ${nearest}`.execute(db);
  return { events, recipes, ingredients, guests };
};
