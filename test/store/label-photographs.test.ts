import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { parseWorkbook, workbookText } from '../../src/core/exchange/workbook.js';
import { mostPhotographs } from '../../src/core/facts/label-photograph.js';
import {
  bringPhotographBack,
  keepPhotograph,
  openPhotograph,
  photographOf,
  takeOutPhotograph,
} from '../../src/store/label-photographs.js';
import { exportWorkbook, importWorkbook } from '../../src/store/workbook.js';
import { beginnings } from '../arbitraries/photograph.js';
import { type TestDatabase, testDatabase } from '../database.js';
import { exampleKitchen } from '../world.js';

let database: TestDatabase;
const by = () => ({
  who: 'test',
  at: new Date('2026-10-14T09:20:00Z'),
  dataDir: mkdtempSync(join(tmpdir(), 'p-')),
});
beforeAll(async () => {
  database = await testDatabase();
  await importWorkbook(database.db, exampleKitchen(), by());
});
afterAll(() => database.close());

const picture = (ingredient: string, size: number, taken = '2026-10-01') => ({
  ingredient,
  taken,
  pack: 'pack low barn',
  type: 'image/png' as const,
  bytes: Buffer.concat([Buffer.from(beginnings['image/png']), Buffer.alloc(size - 8, 255)]),
});

test('a photograph is kept byte by byte, replaced, taken out and brought back', async () => {
  const { db } = database;
  const first = picture('butter', 300);
  expect(await keepPhotograph(db, first)).toBe('kept');
  expect((await openPhotograph(db, 'butter'))!.bytes.equals(first.bytes)).toBe(true);
  await keepPhotograph(db, picture('butter', 500, '2026-10-02'));
  expect(await photographOf(db, 'butter')).toEqual({
    standing: { taken: '2026-10-02', pack: 'pack low barn', standing: true },
    former: expect.objectContaining({ taken: '2026-10-01' }),
  });
  await bringPhotographBack(db, 'butter');
  expect((await openPhotograph(db, 'butter'))!.bytes).toHaveLength(300);
  await takeOutPhotograph(db, 'butter');
  expect(await openPhotograph(db, 'butter')).toBeUndefined();
  await bringPhotographBack(db, 'butter');
  expect((await openPhotograph(db, 'butter'))!.bytes).toHaveLength(300);
  expect(await keepPhotograph(db, picture('nowhere', 20))).toBe('gone');
});

test('it stands in the workbook file and comes back from it, the same bytes both times', async () => {
  const { db } = database;
  const text = workbookText((await exportWorkbook(db))!);
  expect(JSON.parse(text).labelPhotographs).toHaveLength(1);
  const parsed = parseWorkbook(text);
  if (!('workbook' in parsed)) throw new Error(JSON.stringify(parsed.faults));
  await importWorkbook(db, parsed.workbook, by());
  expect(workbookText((await exportWorkbook(db))!)).toBe(text);
  expect((await openPhotograph(db, 'butter'))!.bytes).toHaveLength(300);
});

test('what is no picture, of nothing, or twice in a file is refused with its place', async () => {
  const kitchen = (await exportWorkbook(database.db))!;
  const [one] = kitchen.labelPhotographs;
  const faults = (labelPhotographs: unknown[]) => {
    const parsed = parseWorkbook(JSON.stringify({ ...kitchen, labelPhotographs }));
    return 'faults' in parsed ? parsed.faults.map(({ place, sentence }) => `${place}: ${sentence}`) : [];
  };
  expect(faults([{ ...one, type: 'image/jpeg' }])[0]).toContain(
    'butter, bytes: These bytes are not a picture',
  );
  expect(faults([{ ...one, ingredient: 'buter' }])[0]).toContain(
    'There is no ingredient with the key "buter"',
  );
  expect(faults([one, one])[0]).toContain('two photographs');
  expect(faults([{ ...one, bytes: '<svg>' }])).toHaveLength(1);
});

test('all of them together are bounded, so that the file can be opened again', async () => {
  const { db } = database;
  const large = 8 * 1024 * 1024;
  const keys = ['carrot', 'onion', 'hazelnuts', 'brown-ale', 'horseradish-sauce'];
  const outcomes = [];
  for (const key of keys) outcomes.push(await keepPhotograph(db, picture(key, large)));
  expect(mostPhotographs).toBe(5 * large);
  expect(outcomes).toEqual(['kept', 'kept', 'kept', 'kept', 'full']);
  expect(await keepPhotograph(db, picture('carrot', large, '2026-10-03'))).toBe('kept');
});
