import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseWorkbook, workbookText } from '../../src/core/exchange/workbook.js';
import { edit } from '../../src/store/changes.js';
import { history } from '../../src/store/history.js';
import { exportWorkbook, importWorkbook } from '../../src/store/workbook.js';
import { anyWorkbook } from '../arbitraries/index.js';
import { exampleKitchen } from '../world.js';
import { useKitchen } from './kitchen.js';
import { by, smallKitchen } from './world.js';

const kitchen = useKitchen();

const asFile = async () => {
  const workbook = await exportWorkbook(kitchen.db);
  return workbook && workbookText(workbook);
};

test('a kitchen made by chance leaves as the very file it came as', async () => {
  await fc.assert(
    fc.asyncProperty(anyWorkbook, async (workbook) => {
      const file = workbookText(workbook);
      const parsed = parseWorkbook(file);
      if (!('workbook' in parsed)) throw new Error(JSON.stringify(parsed.faults[0]));
      await importWorkbook(kitchen.db, parsed.workbook, { ...by, dataDir: kitchen.dataDir });
      expect(await asFile()).toBe(file);
    }),
    { numRuns: 25 },
  );
});

test('the example kitchen leaves as it came, and comes again from what left', async () => {
  const file = workbookText(exampleKitchen());
  for (const round of [1, 2]) {
    const parsed = parseWorkbook(round === 1 ? file : ((await asFile()) ?? ''));
    if (!('workbook' in parsed)) throw new Error(JSON.stringify(parsed.faults));
    await importWorkbook(kitchen.db, parsed.workbook, { ...by, dataDir: kitchen.dataDir });
    expect(await asFile()).toBe(file);
  }
});

test('a done event written without what was served keeps it from then on, and leaves as the file it came as', async () => {
  const example = exampleKitchen();
  const events = example.events.map((event) => ({ ...event, state: 'done' as const }));
  await importWorkbook(kitchen.db, { ...example, events }, { ...by, dataDir: kitchen.dataDir });
  const file = (await asFile()) ?? '';
  const parsed = parseWorkbook(file);
  if (!('workbook' in parsed)) throw new Error(JSON.stringify(parsed.faults));
  expect(parsed.workbook.events.map(({ served }) => (served?.recipes.length ?? 0) > 0)).toEqual(
    events.map(() => true),
  );
  await importWorkbook(kitchen.db, parsed.workbook, { ...by, dataDir: kitchen.dataDir });
  expect(await asFile()).toBe(file);
});

test('an import drops the history, and a form opened before it is seen as old', async () => {
  const { db, dataDir } = kitchen;
  const rename = (name: string, revision: number) =>
    edit(db, 'event', 'party', { ...by, revision, change: (doc) => ({ ...doc, name }) });
  const before = await rename('Feast', (await revisionOf()) ?? 0);
  expect(before).toMatchObject({ outcome: 'saved' });
  await importWorkbook(db, smallKitchen(), { ...by, dataDir });
  expect(await history(db, 'event', 'party')).toEqual([]);
  const old = 'revision' in before ? before.revision : 0;
  expect(await rename('Ball', old)).toMatchObject({ outcome: 'refused', problems: [{ code: 'stale' }] });
  expect(await rename('Ball', (await revisionOf()) ?? 0)).toMatchObject({ outcome: 'saved' });
});

const revisionOf = async () => {
  const row = await kitchen.db
    .selectFrom('event')
    .select('revision')
    .where('key', '=', 'party')
    .executeTakeFirst();
  return row?.revision;
};
