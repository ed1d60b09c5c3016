import { sql } from 'kysely';
import pg from 'pg';
import { openEmbedded } from './embedded.js';
import { migrate } from './migrations.js';
import { type Database, kyselyOver, types } from './pool.js';
import { Refusal } from './refusal.js';

export type { Database, EngineName } from './pool.js';

/** Opens the kitchen's database, PostgreSQL when DATABASE_URL is set, and brings it to this program's shape. */
export const openDatabase = async (config: {
  dataDir: string;
  databaseUrl?: string | undefined;
}): Promise<Database> => {
  const opened = config.databaseUrl
    ? await openPostgres(config.databaseUrl)
    : await openEmbedded(config.dataDir);
  try {
    await migrate(opened.db);
    return opened;
  } catch (error) {
    await opened.close();
    throw error;
  }
};

const openPostgres = async (url: string): Promise<Database> => {
  const pool = new pg.Pool({
    connectionString: url,
    max: 10,
    connectionTimeoutMillis: 5000,
    types,
    // Compiling a query takes longer than any query here, and the guessed cost of a recursive one asks for it.
    options: '-c datestyle=iso -c jit=off',
  });
  const db = kyselyOver(pool);
  try {
    const { rows } = await sql<{ server_version_num: string }>`show server_version_num`.execute(db);
    const major = Math.trunc(Number(rows[0]?.server_version_num) / 10_000);
    if (major < 15)
      throw new Refusal(`DATABASE_URL leads to PostgreSQL ${major}; the workbook needs version 15 or newer.`);
  } catch (error) {
    await db.destroy();
    if (error instanceof Refusal) throw error;
    throw new Refusal(`DATABASE_URL cannot be reached: ${reason(error)}.`);
  }
  return { db, engine: 'postgresql', upkeep: async () => {}, close: () => db.destroy() };
};

const reason = (error: unknown): string => {
  const errors = error instanceof AggregateError ? error.errors : [error];
  return errors.map((one) => (one instanceof Error ? one.message : String(one))).join('; ');
};
