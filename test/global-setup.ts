import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PGlite } from '@electric-sql/pglite';
import pg from 'pg';
import type { TestProject } from 'vitest/node';
import { openDatabase } from '../src/store/database.js';
import { overPglite } from '../src/store/embedded.js';
import { migrate } from '../src/store/migrations.js';

declare module 'vitest' {
  export interface ProvidedContext {
    /** A dump of an empty, migrated embedded database; or the server's address and its template's name. */
    emptyDump: string | undefined;
    server: { url: string; template: string } | undefined;
  }
}

/** Makes one empty, migrated database that each test file starts from a copy of. */
export default async (project: TestProject): Promise<() => Promise<void>> => {
  const url = process.env.TEST_DATABASE_URL;
  return url ? postgresTemplate(project, url) : embeddedDump(project);
};

const embeddedDump = async (project: TestProject) => {
  const engine = await PGlite.create();
  const db = overPglite(engine);
  await migrate(db);
  const dump = await engine.dumpDataDir('none');
  const folder = mkdtempSync(join(tmpdir(), 'workbook-test-'));
  const file = join(folder, 'empty.tar');
  writeFileSync(file, Buffer.from(await dump.arrayBuffer()));
  await db.destroy();
  await engine.close();
  project.provide('emptyDump', file);
  project.provide('server', undefined);
  return async () => rmSync(folder, { recursive: true, force: true });
};

const postgresTemplate = async (project: TestProject, url: string) => {
  const template = `workbook_template_${process.pid}`;
  await onServer(url, `create database ${template} template template0 encoding 'UTF8'`);
  const of = new URL(url);
  of.pathname = `/${template}`;
  const { close } = await openDatabase({ dataDir: tmpdir(), databaseUrl: of.href });
  await close();
  project.provide('emptyDump', undefined);
  project.provide('server', { url, template });
  return () => onServer(url, `drop database ${template}`);
};

const onServer = async (url: string, statement: string): Promise<void> => {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  await client.query(statement);
  await client.end();
};
