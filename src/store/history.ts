import { type EntityName, type EntityOf, entities } from '../core/facts/facts.js';
import type { Saving } from './rows.js';
import type { Db, Trx } from './schema.js';

/** One save: what stood before and after, null where the document did not exist. */
export type Change<N extends EntityName> = {
  id: number;
  at: Date;
  who: string;
  entity: N;
  key: string;
  revision: number;
  before: EntityOf[N] | null;
  after: EntityOf[N] | null;
};

/** The last saves of a document, newest first, fifty at most. */
export const history = async <N extends EntityName>(db: Db, entity: N, key: string): Promise<Change<N>[]> => {
  const rows = await db
    .selectFrom('change')
    .selectAll()
    .where('entity', '=', entity)
    .where('key', '=', key)
    .orderBy('id', 'desc')
    .limit(50)
    .execute();
  return rows.map((row) => changeOf(row) as Change<N>);
};

/** One save by its number; undefined when it is not kept. */
export const changeById = async (db: Db, id: number): Promise<Change<EntityName> | undefined> => {
  const row = await db.selectFrom('change').selectAll().where('id', '=', id).executeTakeFirst();
  return row && changeOf(row);
};

/** A document as it stood at a revision; undefined when that is no longer kept. */
export const atRevision = async <N extends EntityName>(
  db: Db,
  entity: N,
  key: string,
  revision: number,
): Promise<EntityOf[N] | undefined> => {
  const rows = await db
    .selectFrom('change')
    .selectAll()
    .where('entity', '=', entity)
    .where('key', '=', key)
    .where('revision', 'in', [revision, revision + 1])
    .orderBy('revision')
    .execute();
  const [first] = rows.map(changeOf);
  // What an import brought has no change of its own, but the next one tells what stood before it.
  const doc = first?.revision === revision ? first.after : first?.before;
  return (doc ?? undefined) as EntityOf[N] | undefined;
};

/** Writes down one save, in the transaction that makes it. */
export const note = async <N extends EntityName>(
  trx: Trx,
  change: { entity: N; key: string; revision: number; before: EntityOf[N] | null; after: EntityOf[N] | null },
  { who, at }: Saving,
): Promise<number> => {
  const { entity, key, revision, before, after } = change;
  const { id } = await trx
    .insertInto('change')
    .values({ at, who, entity, key, revision, before: json(before), after: json(after) })
    .returning('id')
    .executeTakeFirstOrThrow();
  return id;
};

/** Drops what was saved before a moment, and with it the way back to it. */
export const forgetBefore = async (db: Db, moment: Date): Promise<void> => {
  await db.deleteFrom('change').where('at', '<', moment).execute();
};

const json = (doc: unknown): string => (doc === null ? (null as unknown as string) : JSON.stringify(doc));

type Row = {
  id: number;
  at: Date;
  who: string;
  entity: string;
  key: string;
  revision: number;
  before: unknown;
  after: unknown;
};

// What was kept under an earlier version takes today's shape, with today's defaults for what it lacks.
const changeOf = ({ entity, before, after, ...row }: Row): Change<EntityName> => {
  const schema = entities[entity as EntityName];
  const shaped = (doc: unknown) => (doc === null ? null : (schema.parse(doc) as EntityOf[EntityName]));
  return { ...row, entity: entity as EntityName, before: shaped(before), after: shaped(after) };
};
