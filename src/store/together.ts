import { sql } from 'kysely';
import type { EntityName, EntityOf } from '../core/facts/facts.js';
import { same } from '../core/merge.js';
import { load, type Stored } from './documents.js';
import { noteAll } from './history.js';
import { insertDocuments, keyOf, type Saving, updateDocuments } from './rows.js';
import type { Db, Trx } from './schema.js';

/** What is to stand under a key: in place of a stored document, as a new one, or, when null, nothing any more. */
export type Wanted<N extends EntityName> = { stored: Stored<N> | undefined; doc: EntityOf[N] | null };

/** Documents of several kinds, each kind after those it refers to. */
export type Writes = { [N in EntityName]?: Wanted<N>[] };

/** What was saved together: the number that undo takes back, null when nothing differed, and how many documents. */
export type SavedTogether = { together: number | null; documents: number };

const order = ['kitchen', 'place', 'ingredient', 'recipe', 'event'] as const;

/**
 * Writes many documents in few statements, each with its change in the history, and all of one number that undo takes
 * back at once. Whoever calls has seen to the rules; a document that is the same is left alone.
 */
export const putTogether = async (trx: Trx, writes: Writes, by: Saving): Promise<SavedTogether> => {
  const together = await nextNumber(trx);
  let documents = 0;
  for (const entity of order) documents += await putAll(trx, entity, writes[entity] ?? [], together, by);
  for (const entity of order.toReversed())
    documents += await takeAll(trx, entity, writes[entity] ?? [], together, by);
  return { together: documents === 0 ? null : together, documents };
};

const nextNumber = async (trx: Trx): Promise<number> => {
  const { rows } = await sql<{ id: number }>`
    select nextval(pg_get_serial_sequence('change', 'id')) as id`.execute(trx);
  return rows[0]!.id;
};

const putAll = async <N extends EntityName>(
  trx: Trx,
  entity: N,
  wanted: readonly Wanted<N>[],
  together: number,
  by: Saving,
): Promise<number> => {
  const changed = wanted.flatMap(({ stored, doc }) =>
    stored && doc && !same(stored.doc, doc) ? [{ stored, doc, revision: stored.revision + 1 }] : [],
  );
  const added = wanted.flatMap(({ stored, doc }) => (!stored && doc ? [doc] : []));
  const last = await lastRevisions(trx, entity, added.map(keyOf));
  const made = added.map((doc) => ({ doc, revision: (last.get(keyOf(doc)) ?? 0) + 1 }));
  await insertDocuments(trx, entity, made, by);
  if (changed.length > 0) await updateDocuments(trx, entity, changed, by);
  const notes = [
    ...made.map(({ doc, revision }) => ({ entity, key: keyOf(doc), revision, before: null, after: doc })),
    ...changed.map(({ stored, doc, revision }) => ({
      entity,
      key: stored.key,
      revision,
      before: stored.doc,
      after: doc,
    })),
  ];
  await noteAll(trx, notes, together, by);
  return notes.length;
};

const takeAll = async <N extends EntityName>(
  trx: Trx,
  entity: N,
  wanted: readonly Wanted<N>[],
  together: number,
  by: Saving,
): Promise<number> => {
  const gone = wanted.flatMap(({ stored, doc }) => (stored && !doc ? [stored] : []));
  if (gone.length === 0) return 0;
  await sql`delete from ${sql.table(entity)} where id = any(${gone.map(({ id }) => id)})`.execute(trx);
  const notes = gone.map(({ key, revision, doc }) => ({
    entity,
    key,
    revision: revision + 1,
    before: doc,
    after: null,
  }));
  await noteAll(trx, notes, together, by);
  return notes.length;
};

/** The revision at which earlier documents of these keys ended. */
const lastRevisions = async (
  trx: Trx,
  entity: EntityName,
  keys: readonly string[],
): Promise<Map<string, number>> => {
  if (keys.length === 0) return new Map();
  const { rows } = await sql<{ key: string; revision: number }>`
    select key, max(revision) as revision from change
    where entity = ${entity} and key = any(${keys}) group by key`.execute(trx);
  return new Map(rows.map(({ key, revision }) => [key, revision]));
};

/** Documents as they stand, by key. */
export const storedBy = async <N extends EntityName>(
  trx: Db,
  entity: N,
  keys: readonly string[],
): Promise<Map<string, Stored<N>>> =>
  new Map((await load(trx, entity, { keys })).map((stored) => [stored.key, stored]));
