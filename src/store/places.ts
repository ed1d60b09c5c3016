import { sql } from 'kysely';
import type { Place } from '../core/facts/place.js';
import type { Db } from './schema.js';

/** What a list of places shows of each. */
export type PlaceRow = {
  key: string;
  name: string;
  kind: Place['kind'];
  drive: number | null;
  ovens: number;
  rings: number;
  archived: boolean;
  origin: 'own' | 'example';
  updatedAt: Date;
  /** How many events are there. */
  uses: number;
};

/** Every place, the home kitchen first, then by key; archived ones too. */
export const list = async (db: Db): Promise<PlaceRow[]> => {
  const { rows } = await sql<PlaceRow>`
    select p.key, p.name, p.kind, p.drive, jsonb_array_length(p.ovens) as ovens, p.rings,
      p.archived_at is not null as archived, p.origin, p.updated_at as "updatedAt",
      (select count(*) from event where place = p.key) as uses
    from place p order by p.kind <> 'home', p.key collate "C"`.execute(db);
  return rows;
};
