import { type EntityName, type EntityOf, entities } from '../core/facts/facts.js';
import type { Saving } from './rows.js';
import type { Db, Trx } from './schema.js';
import { insertRows } from './statements.js';

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
  /** The number that many saves made together share; null for one made alone. */
  together: number | null;
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
  // A save whose revision was taken from it, so that nothing is joined with what came before.
  if (revision < 1) return undefined;
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

type Noted<N extends EntityName> = Pick<Change<N>, 'entity' | 'key' | 'revision' | 'before' | 'after'>;

/** Writes down many saves that are made together. */
export const noteAll = async <N extends EntityName>(
  trx: Trx,
  changes: readonly Noted<N>[],
  together: number,
  { who, at }: Saving,
): Promise<void> => {
  await insertRows(
    trx,
    'change',
    changes.map(({ entity, key, revision, before, after }) => ({
      at,
      who,
      entity,
      key,
      revision,
      before,
      after,
      together,
    })),
  );
};

/** Every save of those made together, in the order they were written. */
export const changesTogether = async (db: Db, together: number): Promise<Change<EntityName>[]> =>
  (await db.selectFrom('change').selectAll().where('together', '=', together).orderBy('id').execute()).map(
    changeOf,
  );

/** How many documents of each kind were saved together. */
export const countTogether = async (
  db: Db,
  together: number,
): Promise<{ entity: EntityName; count: number }[]> => {
  const rows = await db
    .selectFrom('change')
    .select((eb) => ['entity', eb.fn.countAll<number>().as('count')])
    .where('together', '=', together)
    .groupBy('entity')
    .orderBy('entity')
    .execute();
  return rows.map(({ entity, count }) => ({ entity: entity as EntityName, count: Number(count) }));
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
  together: number | null;
};

// What was kept under an earlier version takes today's shape, with today's defaults for what it lacks.
const changeOf = ({ entity, before, after, ...row }: Row): Change<EntityName> => {
  const schema = entities[entity as EntityName];
  const shaped = (doc: unknown) => (doc === null ? null : (schema.parse(doc) as EntityOf[EntityName]));
  return { ...row, entity: entity as EntityName, before: shaped(before), after: shaped(after) };
};
