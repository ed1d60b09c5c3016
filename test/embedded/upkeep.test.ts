import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { sql } from 'kysely';
import { expect, test } from 'vitest';
import { workbookText } from '../../src/core/exchange/workbook.js';
import { openDatabase } from '../../src/store/database.js';
import { exportWorkbook, importWorkbook } from '../../src/store/workbook.js';
import { by, smallKitchen } from '../store/world.js';
import { newFolder } from './program.js';

const logPosition = sql<{ at: number; redo: number }>`
  select pg_current_wal_lsn() - '0/0'::pg_lsn as at, (select redo_lsn - '0/0'::pg_lsn from pg_control_checkpoint()) as redo`;

test('past 64 MB of log: a verified backup, then a checkpoint; before that, nothing', async () => {
  const dataDir = newFolder();
  const { db, upkeep, close } = await openDatabase({ dataDir });
  await importWorkbook(db, smallKitchen(), { ...by, dataDir });
  await upkeep();
  expect(readdirSync(dataDir)).not.toContain('backups');

  await sql`create table filler as select repeat(md5(n::text), 30) as words from generate_series(1, 70000) as n`.execute(
    db,
  );
  await sql`drop table filler`.execute(db);
  const before = (await logPosition.execute(db)).rows[0]!;
  await upkeep();
  const after = (await logPosition.execute(db)).rows[0]!;
  expect(Number(after.redo)).toBeGreaterThanOrEqual(Number(before.at));
  const [backup = '', ...others] = readdirSync(join(dataDir, 'backups'));
  expect(others).toEqual([]);
  const file = join(dataDir, 'backups', backup);
  expect(statSync(file).mode & 0o777).toBe(0o600);
  expect(readFileSync(file, 'utf8')).toBe(workbookText((await exportWorkbook(db))!));
  await upkeep();
  expect(readdirSync(join(dataDir, 'backups'))).toHaveLength(1);
  await close();
});
