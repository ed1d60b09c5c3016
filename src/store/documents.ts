import { type RawBuilder, sql } from 'kysely';
import type { EntityName, EntityOf } from '../core/facts/facts.js';
import { shapeOf } from './entities/index.js';
import type { Part } from './entities/shape.js';
import type { Db } from './schema.js';

/** A document as it stands, with who last saved it. */
export type Stored<N extends EntityName> = {
  id: number;
  key: string;
  doc: EntityOf[N];
  revision: number;
  updatedAt: Date;
  updatedBy: string;
};

type Selection = {
  /** The documents asked for; all of them when absent. */
  keys?: readonly string[];
  /** Of each pack's prices the latest alone: all that a sheet needs. */
  latestPrices?: boolean;
};

/** Documents sorted by key, each whole, in one query. */
export const load = async <N extends EntityName>(
  db: Db,
  entity: N,
  { keys, latestPrices = false }: Selection = {},
): Promise<Stored<N>[]> => {
  if (keys?.length === 0) return [];
  const shape = shapeOf(entity);
  const parts = shape.parts.map((part) => partColumn(part, latestPrices && part.latestOf !== undefined));
  const chosen = keys ? sql`where t.key = any(${keys})` : sql``;
  const { rows } = await sql<StoredRow>`
    select ${sql.join([sql`t.*`, ...parts])} from ${sql.table(shape.table)} as t ${chosen}
    order by t.key collate "C"`.execute(db);
  return rows.map((row) => ({
    id: row.id,
    key: row.key,
    doc: shape.doc(row as never),
    revision: row.revision,
    updatedAt: row.updated_at,
    updatedBy: row.updated_by,
  }));
};

type StoredRow = { id: number; key: string; revision: number; updated_at: Date; updated_by: string };

const partColumn = <D>(part: Part<D>, latest: boolean): RawBuilder<unknown> => {
  const table = sql.table(part.table);
  const mine = sql`p.${sql.ref(part.owner)} = t.id`;
  const live = part.withdraws ? sql`${mine} and p.withdrawn_at is null` : mine;
  const order = sql.ref(`p.${part.order}`);
  const of = sql.ref(part.latestOf ?? part.order);
  const rows = latest
    ? sql`(select distinct on (${of}) p.* from ${table} as p where ${live} order by ${of}, date desc, position desc)`
    : sql`(select p.* from ${table} as p where ${live})`;
  return sql`coalesce((select jsonb_agg(to_jsonb(p) order by ${order}) from ${rows} as p), '[]') as ${sql.ref(part.table)}`;
};

/** One document with its revision; undefined when there is none of that key. */
export const read = async <N extends EntityName>(
  db: Db,
  entity: N,
  key: string,
): Promise<Stored<N> | undefined> => (await load(db, entity, { keys: [key] }))[0];
