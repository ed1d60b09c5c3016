import { readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { PGlite } from '@electric-sql/pglite';
import pg from 'pg';
import { inject } from 'vitest';
import { openDatabase } from '../src/store/database.js';
import { overPglite } from '../src/store/embedded.js';
import type { Database } from '../src/store/pool.js';

export type TestDatabase = Pick<Database, 'db' | 'engine' | 'close'>;

/** An empty, migrated database of its own: embedded, or on the server that TEST_DATABASE_URL names. */
export const testDatabase = async (): Promise<TestDatabase> => {
  const server = inject('server');
  return server ? onPostgres(server.url, server.template) : embedded(inject('emptyDump') ?? '');
};

const embedded = async (dump: string): Promise<TestDatabase> => {
  const engine = await PGlite.create({ loadDataDir: new Blob([readFileSync(dump)]) });
  const db = overPglite(engine);
  return {
    db,
    engine: 'embedded',
    close: async () => {
      await db.destroy();
      await engine.close();
    },
  };
};

let made = 0;

const onPostgres = async (url: string, template: string): Promise<TestDatabase> => {
  const name = `workbook_test_${process.pid}_${Date.now()}_${++made}`;
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  await client.query(`create database ${name} template ${template}`);
  const of = new URL(url);
  of.pathname = `/${name}`;
  const { db, engine, close } = await openDatabase({ dataDir: tmpdir(), databaseUrl: of.href });
  return {
    db,
    engine,
    close: async () => {
      await close();
      await client.query(`drop database ${name}`);
      await client.end();
    },
  };
};
