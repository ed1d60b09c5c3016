import { Kysely, PostgresDialect } from 'kysely';
import pg from 'pg';
import type { Db, Schema } from './schema.js';

export type EngineName = 'embedded' | 'postgresql';

export type Database = {
  db: Db;
  engine: EngineName;
  /** What the embedded engine needs from time to time; nothing on PostgreSQL. */
  upkeep(): Promise<void>;
  close(): Promise<void>;
};

/** A kitchen's queries over a pool of either engine. */
export const kyselyOver = (pool: pg.Pool): Db => {
  // A connection lost while idle is replaced by the pool; without a listener it would end the program.
  pool.on('error', () => {});
  return new Kysely<Schema>({ dialect: new PostgresDialect({ pool }) });
};

const safeInteger = (text: string): number => {
  const value = Number(text);
  if (!Number.isSafeInteger(value)) throw new RangeError(`${text} is more than a kitchen's figures hold`);
  return value;
};

const { builtins } = pg.types;

/** How columns reach the program: whole numbers as numbers, days as the text they are, instants as dates. */
export const types: pg.CustomTypesConfig = {
  getTypeParser: ((oid: number, format: 'text') => {
    if (oid === builtins.INT8) return safeInteger;
    if (oid === builtins.DATE) return (text: string) => text;
    return pg.types.getTypeParser(oid, format);
  }) as typeof pg.types.getTypeParser,
};
