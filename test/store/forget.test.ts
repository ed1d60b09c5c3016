import { mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { sql } from 'kysely';
import { beforeEach, expect, test } from 'vitest';
import { parseWorkbook, workbookText } from '../../src/core/exchange/workbook.js';
import { edit } from '../../src/store/changes.js';
import { read } from '../../src/store/documents.js';
import { forget } from '../../src/store/forget.js';
import { changeById, history } from '../../src/store/history.js';
import { keptOfGuests } from '../../src/store/kept-guests.js';
import { undo } from '../../src/store/undo.js';
import { backUp, exportWorkbook, importWorkbook } from '../../src/store/workbook.js';
import { useKitchen } from './kitchen.js';
import { by, other, smallKitchen } from './world.js';

/** Words that stand nowhere else, so that one left behind is found. */
const words = 'zwiebelfrei-quux';
const kitchen = useKitchen(() => {
  const small = smallKitchen();
  const [party] = small.events;
  const guests = [
    { ...party!.guests[0]!, key: 'coeliac-moss', diets: ['coeliac'], other: words },
    { ...party!.guests[0]!, key: 'fern', name: 'Fern', diets: ['vegan'] },
  ];
  return { ...small, events: [{ ...party!, guests }] };
});
const folder = () => join(kitchen.dataDir, 'backups');
const files = () => readdirSync(folder()).map((name) => readFileSync(join(folder(), name), 'utf8'));
const change = async (make: (guests: NonNullable<Awaited<ReturnType<typeof guestsNow>>>) => unknown[]) => {
  const { revision } = (await read(kitchen.db, 'event', 'party'))!;
  return edit(kitchen.db, 'event', 'party', {
    ...by,
    revision,
    change: (doc) => ({ ...doc, guests: make(doc.guests) as typeof doc.guests }),
  });
};
const guestsNow = async () => (await read(kitchen.db, 'event', 'party'))?.doc.guests;
const forgetMoss = (names = false) =>
  forget(kitchen.db, 'party', {
    ...by,
    guests: ['coeliac-moss'],
    names,
    dataDir: kitchen.dataDir,
  });

/** Every row of every table as text, and what the engine noted of their values. */
const everything = async (): Promise<string> => {
  const { rows } = await sql<{ name: string }>`select tablename as name from pg_tables
    where schemaname = current_schema()`.execute(kitchen.db);
  let text = '';
  for (const { name } of rows) {
    const all = await sql<{ row: string }>`select t::text as row from ${sql.table(name)} t`.execute(
      kitchen.db,
    );
    text += all.rows.map(({ row }) => row).join('\n');
  }
  const noted = await sql<{ row: string }>`select s::text as row from pg_stats s
    where schemaname = current_schema()`.execute(kitchen.db);
  return text + noted.rows.map(({ row }) => row).join('\n');
};

beforeEach(() => {
  rmSync(folder(), { recursive: true, force: true });
});

test('after it no byte of the diet, the words or the key is in a row, a save, a backup or the file', async () => {
  const { db, dataDir } = kitchen;
  await change(([moss, fern]) => [{ ...moss, other: `${words} twice` }, fern]);
  await backUp(db, dataDir, by.at);
  await change(([moss, fern]) => [fern, { ...moss, name: 'Moss again' }]);
  await backUp(db, dataDir, other.at);
  await sql`analyze`.execute(db);
  const secrets = [words, 'coeliac'];
  const before = await everything();
  for (const secret of secrets)
    expect([before, files().join()].map((text) => text.includes(secret))).toEqual([true, true]);

  expect(await forgetMoss()).toEqual({ guests: 1, saves: 2, backups: 2, swept: true });
  const after = [await everything(), ...files(), workbookText((await exportWorkbook(db))!)];
  for (const secret of secrets) expect(after.filter((text) => text.includes(secret))).toEqual([]);
  expect((await guestsNow())!.map(({ name, answered, diets }) => [name, answered, diets])).toEqual([
    ['Fern', true, ['vegan']],
    ['Moss again', false, []],
  ]);
  expect(after[0]).toContain('Moss again');
  expect(await keptOfGuests(db, dataDir, 'party')).toMatchObject({
    guests: [
      { key: 'fern', saves: 2, backups: 2 },
      { key: 'forgotten-1', saves: 0, backups: 0 },
    ],
    unreadable: [],
  });
});

test('names go too where that is wished, in the history and the backups as well', async () => {
  const { db, dataDir } = kitchen;
  await change(([moss, fern]) => [{ ...moss, count: 2 }, fern]);
  await backUp(db, dataDir, by.at);
  await forgetMoss(true);
  for (const text of [await everything(), ...files()]) expect(text).not.toMatch(/moss/i);
});

test('no undo brings it back, and a form opened before is too old to be saved', async () => {
  const { db } = kitchen;
  const opened = (await read(db, 'event', 'party'))!;
  await change(([moss, fern]) => [{ ...moss, diets: ['coeliac', 'vegan'] }, fern]);
  const [taken] = await history(db, 'event', 'party');
  await forgetMoss();
  expect(await undo(db, taken!.id, other)).toMatchObject({ outcome: 'saved', changeId: null });
  expect((await changeById(db, taken!.id))?.before?.name).toBe('Party in the barn');
  for (const revision of [opened.revision, opened.revision + 1])
    expect(
      await edit(db, 'event', 'party', {
        ...by,
        revision,
        change: (doc) => ({ ...doc, guests: opened.doc.guests }),
      }),
    ).toMatchObject({ outcome: 'refused', problems: [{ code: 'stale' }] });
  expect((await guestsNow())![0]).toMatchObject({ answered: false, diets: [], other: '' });
});

test('a backup restores as before, for its owner alone, with all else as it was', async () => {
  const { db, dataDir } = kitchen;
  const file = (await backUp(db, dataDir, by.at))!;
  const was = JSON.parse(readFileSync(file, 'utf8'));
  writeFileSync(`${file}.new`, words);
  await forgetMoss();
  expect(readdirSync(folder())).toHaveLength(1);
  expect(statSync(file).mode & 0o777).toBe(0o600);
  const parsed = parseWorkbook(readFileSync(file, 'utf8'));
  if (!('workbook' in parsed)) throw new Error(JSON.stringify(parsed.faults));
  await importWorkbook(db, parsed.workbook, { ...by, dataDir });
  const is = JSON.parse(workbookText((await exportWorkbook(db))!));
  is.events[0].guests[0] = was.events[0].guests[0];
  expect(is).toEqual(was);
});

test('a guest who is no longer listed is found and forgotten too; a file that cannot be read is named', async () => {
  const { db, dataDir } = kitchen;
  await change(([, fern]) => [fern]);
  mkdirSync(folder(), { recursive: true });
  writeFileSync(join(folder(), 'torn.json'), '{"events": [');
  expect(await keptOfGuests(db, dataDir, 'party')).toMatchObject({
    guests: [
      { key: 'fern', listed: true },
      { key: 'coeliac-moss', name: 'Moss', other: words, listed: false, saves: 1 },
    ],
    unreadable: ['torn.json'],
  });
  await forgetMoss();
  expect(await everything()).not.toContain(words);
  expect(files()).toEqual(['{"events": [']);
});
