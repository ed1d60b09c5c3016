import { type RawBuilder, sql } from 'kysely';
import type { Part, Row } from './entities/shape.js';
import type { Trx } from './schema.js';

// One statement takes so many rows, and so much text of them: PostgreSQL holds no more than 256 MB of JSON in one.
const mostRows = 5000;
const mostText = 32_000_000;

/** Writes rows of a part over those of the same identity, or as new ones; each names its owner. */
export const upsert = async <D>(trx: Trx, part: Part<D>, rows: Row[]): Promise<void> => {
  if (rows.length === 0) return;
  const identity = [part.owner, ...part.identity];
  const rewritten = Object.keys(rows[0] ?? {}).filter(
    (column) => !identity.includes(column) && !part.written?.includes(column),
  );
  const sets = rewritten.map((column) => sql`${sql.ref(column)} = excluded.${sql.ref(column)}`);
  if (part.withdraws && !part.written) sets.push(sql`withdrawn_at = null`);
  const live = part.written ? sql` where withdrawn_at is null` : sql``;
  const on = sql.join(identity.map((column) => sql.ref(column)));
  await insert(trx, part.table, rows, sql`on conflict (${on})${live} do update set ${sql.join(sets)}`);
};

/** Adds rows of one table, whatever their number in a few statements. */
export const insertRows = async (trx: Trx, table: string, rows: Row[]): Promise<void> => {
  await insert(trx, table, rows, sql``);
};

/** Adds rows of a table and gives what `then` asks to be returned. */
export const insert = async <R>(
  trx: Trx,
  table: string,
  rows: Row[],
  then: RawBuilder<unknown>,
): Promise<R[]> => {
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
export function* inStatements(rows: readonly Row[]): Generator<string> {
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

/** Marks rows of a part as withdrawn; they stay. */
export const withdraw = async <D>(trx: Trx, part: Part<D>, gone: Row[], at: Date): Promise<void> => {
  for (const some of inStatements(gone))
    await sql`update ${sql.table(part.table)} as p set withdrawn_at = ${at}
      from ${these(part, some)} and p.withdrawn_at is null`.execute(trx);
};

/** Deletes rows of a part. */
export const remove = async <D>(trx: Trx, part: Part<D>, gone: Row[]): Promise<void> => {
  for (const some of inStatements(gone))
    await sql`delete from ${sql.table(part.table)} as p using ${these(part, some)}`.execute(trx);
};

/** The rows of `p` that these texts name. */
const these = <D>(part: Part<D>, rows: string): RawBuilder<unknown> => {
  const matches = [part.owner, ...part.identity].map(
    (column) => sql`x.${sql.ref(column)} = p.${sql.ref(column)}`,
  );
  return sql`jsonb_populate_recordset(null::${sql.table(part.table)}, ${rows}::jsonb) as x
    where ${sql.join(matches, sql` and `)}`;
};
