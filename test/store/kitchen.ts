import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach } from 'vitest';
import type { Workbook } from '../../src/core/facts/facts.js';
import type { Db } from '../../src/store/schema.js';
import { importWorkbook } from '../../src/store/workbook.js';
import { type TestDatabase, testDatabase } from '../database.js';
import { by, smallKitchen } from './world.js';

/** A database for the tests of one file, filled anew with the small kitchen before each. */
export const useKitchen = (fill: () => Workbook | undefined = smallKitchen) => {
  let database: TestDatabase;
  let dataDir: string;
  beforeAll(async () => {
    database = await testDatabase();
    dataDir = mkdtempSync(join(tmpdir(), 'workbook-kitchen-'));
  });
  beforeEach(async () => {
    const workbook = fill();
    if (workbook) await importWorkbook(database.db, workbook, { ...by, dataDir });
  });
  afterAll(async () => {
    await database.close();
    rmSync(dataDir, { recursive: true, force: true });
  });
  return {
    get db(): Db {
      return database.db;
    },
    get engine() {
      return database.engine;
    },
    get dataDir(): string {
      return dataDir;
    },
  };
};
