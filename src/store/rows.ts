import { isDeepStrictEqual } from 'node:util';
import { type RawBuilder, sql } from 'kysely';
import type { EntityName, EntityOf } from '../core/facts/facts.js';
import { kitchenKey, shapeOf } from './entities/index.js';
import type { Part, Row } from './entities/shape.js';
import type { Trx } from './schema.js';

/** Who saves, and when. */
export type Saving = { who: string; at: Date };

type Made<N extends EntityName> = { doc: EntityOf[N]; revision: number };

// One statement takes so many rows, and so much text of them: PostgreSQL holds no more than 256 MB of JSON in one.
const mostRows = 5000;
const mostText = 32_000_000;

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

/** Rewrites what differs between two states of a document; rows that did not change are left alone. */
export const updateDocument = async <N extends EntityName>(
  trx: Trx,
  entity: N,
  stored: { id: number; revision: number; doc: EntityOf[N] },
  doc: EntityOf[N],
  saving: Saving,
): Promise<void> => {
  const shape = shapeOf(entity);
  const { key: _, ...row } = rootRow(entity, doc, stored.revision, saving);
  if ('archived' in doc && 'archived' in stored.doc && doc.archived && stored.doc.archived)
    delete row.archived_at;
  const columns = sql.join(Object.keys(row).map((column) => sql.ref(column)));
  const table = sql.table(shape.table);
  await sql`update ${table} set (${columns}) =
    (select ${columns} from jsonb_populate_record(null::${table}, ${JSON.stringify(row)}::jsonb))
    where id = ${stored.id}`.execute(trx);
  const moves = shape.parts.map((part) => moved(part, stored.doc, doc));
  // What leaves by being withdrawn makes room first; what is written follows its parents; the rest leaves last.
  for (const { part, gone } of moves)
    if (part.withdraws) await withdraw(trx, part, stored.id, gone, saving.at);
  for (const { part, written } of moves) await upsert(trx, part, stored.id, written);
  for (const { part, gone } of moves.reverse()) if (!part.withdraws) await remove(trx, part, stored.id, gone);
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

type Moves<D> = { part: Part<D>; written: Row[]; gone: Row[] };

const moved = <D>(part: Part<D>, before: D, after: D): Moves<D> => {
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
  return { part, written, gone: [...gone, ...old.values()] };
};

const upsert = async <D>(trx: Trx, part: Part<D>, owner: number, rows: Row[]): Promise<void> => {
  if (rows.length === 0) return;
  const identity = [part.owner, ...part.identity];
  const rewritten = Object.keys(rows[0] ?? {}).filter(
    (column) => !identity.includes(column) && !part.written?.includes(column),
  );
  const sets = rewritten.map((column) => sql`${sql.ref(column)} = excluded.${sql.ref(column)}`);
  if (part.withdraws && !part.written) sets.push(sql`withdrawn_at = null`);
  const live = part.written ? sql` where withdrawn_at is null` : sql``;
  const on = sql.join(identity.map((column) => sql.ref(column)));
  await insert(
    trx,
    part.table,
    rows.map((row) => ({ ...row, [part.owner]: owner })),
    sql`on conflict (${on})${live} do update set ${sql.join(sets)}`,
  );
};

const insert = async <R>(trx: Trx, table: string, rows: Row[], then: RawBuilder<unknown>): Promise<R[]> => {
  const columns = sql.join(Object.keys(rows[0] ?? {}).map((column) => sql.ref(column)));
  const into = sql.table(table);
  const done: R[] = [];
  for (const some of inStatements(rows)) {
    const answer = await sql<R>`insert into ${into} (${columns})
      select ${columns} from jsonb_populate_recordset(null::${into}, ${some}::jsonb)
      ${then}`.execute(trx);
    for (const row of answer.rows) done.push(row);
  }
  return done;
};

/** Rows as JSON lists, none longer than one statement takes. */
function* inStatements(rows: readonly Row[]): Generator<string> {
  let texts: string[] = [];
  let length = 0;
  for (const row of rows) {
    const text = JSON.stringify(row);
    if (texts.length === mostRows || (texts.length > 0 && length + text.length > mostText)) {
      yield `[${texts.join()}]`;
      texts = [];
      length = 0;
    }
    texts.push(text);
    length += text.length;
  }
  if (texts.length > 0) yield `[${texts.join()}]`;
}

const withdraw = async <D>(trx: Trx, part: Part<D>, owner: number, gone: Row[], at: Date): Promise<void> => {
  if (gone.length === 0) return;
  await sql`update ${sql.table(part.table)} as p set withdrawn_at = ${at}
    where ${these(part, owner, gone)} and p.withdrawn_at is null`.execute(trx);
};

const remove = async <D>(trx: Trx, part: Part<D>, owner: number, gone: Row[]): Promise<void> => {
  if (gone.length === 0) return;
  await sql`delete from ${sql.table(part.table)} as p where ${these(part, owner, gone)}`.execute(trx);
};

const these = <D>(part: Part<D>, owner: number, rows: Row[]): RawBuilder<unknown> => {
  const mine = sql`p.${sql.ref(part.owner)} = ${owner}`;
  if (part.identity.length === 0) return mine;
  const table = sql.table(part.table);
  const matches = part.identity.map((column) => sql`x.${sql.ref(column)} = p.${sql.ref(column)}`);
  return sql`${mine} and exists (select from jsonb_populate_recordset(null::${table}, ${JSON.stringify(rows)}::jsonb)
    as x where ${sql.join(matches, sql` and `)})`;
};
