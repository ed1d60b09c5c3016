import { isDeepStrictEqual } from 'node:util';
import { sql } from 'kysely';
import type { EntityName, EntityOf } from '../core/facts/facts.js';
import { kitchenKey, shapeOf } from './entities/index.js';
import type { Part, Row } from './entities/shape.js';
import type { Trx } from './schema.js';
import { inStatements, insert, remove, upsert, withdraw } from './statements.js';

/** Who saves, and when. */
export type Saving = { who: string; at: Date };

type Made<N extends EntityName> = { doc: EntityOf[N]; revision: number };

/** The key a document is kept under; the kitchen is one and has a fixed one. */
export const keyOf = (doc: object): string => ('key' in doc ? (doc.key as string) : kitchenKey);

/** Adds documents as rows, whatever their number in a few statements. */
export const insertDocuments = async <N extends EntityName>(
  trx: Trx,
  entity: N,
  made: readonly Made<N>[],
  saving: Saving,
): Promise<void> => {
  if (made.length === 0) return;
  const shape = shapeOf(entity);
  const roots = made.map(({ doc, revision }) => rootRow(entity, doc, revision, saving));
  const ids = new Map<string, number>();
  for (const { id, key } of await insert<{ id: number; key: string }>(
    trx,
    shape.table,
    roots,
    sql`returning id, key`,
  ))
    ids.set(key, id);
  for (const part of shape.parts) {
    const rows = made.flatMap(({ doc }) =>
      part.rows(doc).map((row) => ({ ...row, [part.owner]: ids.get(keyOf(doc)) })),
    );
    await insert(trx, part.table, rows, sql``);
  }
};

/** A stored document, the revision it is to have, and what is to stand in its place. */
export type Rewritten<N extends EntityName> = {
  stored: { id: number; doc: EntityOf[N] };
  revision: number;
  doc: EntityOf[N];
};

/** Rewrites what differs between two states of documents; rows that did not change are left alone. */
export const updateDocuments = async <N extends EntityName>(
  trx: Trx,
  entity: N,
  changes: readonly Rewritten<N>[],
  saving: Saving,
): Promise<void> => {
  const shape = shapeOf(entity);
  await rewriteRoots(trx, entity, changes, saving);
  const moves = shape.parts.map((part) => {
    const written: Row[] = [];
    const gone: Row[] = [];
    for (const { stored, doc } of changes) {
      const owned = (row: Row) => ({ ...row, [part.owner]: stored.id });
      const move = moved(part, stored.doc, doc);
      for (const row of move.written) written.push(owned(row));
      for (const row of move.gone) gone.push(owned(row));
    }
    return { part, written, gone };
  });
  // What leaves by being withdrawn makes room first; what is written follows its parents; the rest leaves last.
  for (const { part, gone } of moves) if (part.withdraws) await withdraw(trx, part, gone, saving.at);
  for (const { part, written } of moves) await upsert(trx, part, written);
  for (const { part, gone } of moves.reverse()) if (!part.withdraws) await remove(trx, part, gone);
};

/** The same for one document, which is to have the revision that `stored` carries. */
export const updateDocument = <N extends EntityName>(
  trx: Trx,
  entity: N,
  stored: { id: number; revision: number; doc: EntityOf[N] },
  doc: EntityOf[N],
  saving: Saving,
): Promise<void> => updateDocuments(trx, entity, [{ stored, revision: stored.revision, doc }], saving);

const rewriteRoots = async <N extends EntityName>(
  trx: Trx,
  entity: N,
  changes: readonly Rewritten<N>[],
  saving: Saving,
): Promise<void> => {
  const table = sql.table(entity);
  const rows = changes.map(({ stored, revision, doc }) => {
    const { key: _, ...row } = rootRow(entity, doc, revision, saving);
    return { ...row, id: stored.id };
  });
  await makeNamesFree(trx, entity, changes);
  const columns = Object.keys(rows[0] ?? {}).filter((column) => column !== 'id');
  const sets = columns.map((column) => {
    const name = sql.ref(column);
    // What was archived before stays archived since then.
    return column === 'archived_at'
      ? sql`${name} = case when r.${name} is not null then coalesce(t.${name}, r.${name}) end`
      : sql`${name} = r.${name}`;
  });
  for (const some of inStatements(rows))
    await sql`update ${table} as t set ${sql.join(sets)}
      from jsonb_populate_recordset(null::${table}, ${some}::jsonb) as r where t.id = r.id`.execute(trx);
};

/** Two documents may change names with each other, and each name stands once at every moment. */
const makeNamesFree = async <N extends EntityName>(
  trx: Trx,
  entity: N,
  changes: readonly Rewritten<N>[],
): Promise<void> => {
  const renamed = changes.filter(({ stored, doc }) => stored.doc.name !== doc.name);
  if (renamed.length < 2 || entity === 'kitchen') return;
  const ids = renamed.map(({ stored }) => stored.id);
  await sql`update ${sql.table(entity)} set name_key = ${'\u0001'} || key where id = any(${ids})`.execute(
    trx,
  );
};

const rootRow = <N extends EntityName>(
  entity: N,
  doc: EntityOf[N],
  revision: number,
  { who, at }: Saving,
): Row => ({
  key: keyOf(doc),
  ...shapeOf(entity).row(doc),
  ...('archived' in doc ? { archived_at: doc.archived ? at : null } : {}),
  revision,
  updated_at: at,
  updated_by: who,
});

const moved = <D>(part: Part<D>, before: D, after: D): { written: Row[]; gone: Row[] } => {
  const nameOf = (row: Row) => JSON.stringify(part.identity.map((column) => row[column]));
  const old = new Map(part.rows(before).map((row) => [nameOf(row), row]));
  const written: Row[] = [];
  const gone: Row[] = [];
  for (const row of part.rows(after)) {
    const was = old.get(nameOf(row));
    old.delete(nameOf(row));
    if (was && isDeepStrictEqual(was, row)) continue;
    written.push(row);
    if (was && part.written?.some((column) => was[column] !== row[column])) gone.push(was);
  }
  return { written, gone: [...gone, ...old.values()] };
};
