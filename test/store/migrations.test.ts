import { sql } from 'kysely';
import { expect, test } from 'vitest';
import { migrations } from '../../migrations/index.js';
import { migrate, schemaVersion } from '../../src/store/migrations.js';
import { Refusal } from '../../src/store/refusal.js';
import { exportWorkbook } from '../../src/store/workbook.js';
import { useKitchen } from './kitchen.js';
import { smallKitchen } from './world.js';

const kitchen = useKitchen();

test('migrating what is migrated changes nothing', async () => {
  await migrate(kitchen.db);
  expect(await exportWorkbook(kitchen.db)).toEqual(smallKitchen());
});

test('the steps are numbered in their order', () => {
  const names = Object.keys(migrations);
  expect(names).toEqual(names.toSorted());
  expect(names.map((name) => Number(name.slice(0, 4)))).toEqual(names.map((_, n) => n + 1));
  expect(schemaVersion).toBe(names.at(-1));
});

test('a database that a newer workbook wrote is refused and left as it is', async () => {
  const later = '9999-later';
  await sql`insert into kysely_migration (name, timestamp) values (${later}, '2030')`.execute(kitchen.db);
  await expect(migrate(kitchen.db)).rejects.toThrow(Refusal);
  await expect(migrate(kitchen.db)).rejects.toThrow(/newer workbook .*9999-later/);
  expect(await exportWorkbook(kitchen.db)).toEqual(smallKitchen());
  await sql`delete from kysely_migration where name = ${later}`.execute(kitchen.db);
});
