import { mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import { expect, test } from 'vitest';
import { parseWorkbook, workbookText } from '../../src/core/exchange/workbook.js';
import type { PrintedLine } from '../../src/core/facts/printed-sheet.js';
import { edit } from '../../src/store/changes.js';
import { read } from '../../src/store/documents.js';
import { forget } from '../../src/store/forget.js';
import { forgetOld } from '../../src/store/forget-old.js';
import { notePrint, prints } from '../../src/store/printed-sheets.js';
import { remove } from '../../src/store/removal.js';
import { backUp, exportWorkbook } from '../../src/store/workbook.js';
import { exampleKitchen } from '../world.js';
import { useKitchen } from './kitchen.js';

const kitchen = useKitchen(exampleKitchen);
const event = 'retirement-lunch';
const by = { who: 'Rosa', at: new Date('2026-12-02T10:20:31.500Z') };
const line = (of: PrintedLine['of'], n: number, dish = ''): PrintedLine => ({
  id: String(n).repeat(32),
  of,
  dish,
  fingerprint: 'ab'.repeat(16),
});
const lines = [line('head', 1), line('dish', 2, 'Leek tart'), line('guest', 3)];

test('the last print of a paper stands, by whom and to the second', async () => {
  const { db } = kitchen;
  await notePrint(db, { event, sheet: 'pass', lines: [line('head', 1)] }, by);
  await notePrint(db, { event, sheet: 'pass', lines }, { ...by, who: 'Nils' });
  await notePrint(db, { event, sheet: 'allergens', lines }, by);
  expect(await prints(db)).toEqual([
    { event, sheet: 'allergens', who: 'Rosa', at: '2026-12-02T10:20:31Z', lines },
    { event, sheet: 'pass', who: 'Nils', at: '2026-12-02T10:20:31Z', lines },
  ]);
  expect(await prints(db, ['choir-supper'])).toEqual([]);
});

test('of an event that is not there nothing is noted', async () => {
  await notePrint(kitchen.db, { event: 'no-such', sheet: 'pass', lines }, by);
  expect(await prints(kitchen.db, ['no-such'])).toEqual([]);
});

test('the file carries them, and says what is wrong with those it cannot keep', async () => {
  const { db } = kitchen;
  await notePrint(db, { event, sheet: 'pass', lines }, by);
  const workbook = (await exportWorkbook(db))!;
  const [print] = workbook.printedSheets;
  const text = workbookText(workbook);
  expect(parseWorkbook(text)).toEqual({ workbook: JSON.parse(text) });
  const wrong = { ...print!, event: 'retirement-lunchh', lines: [lines[0]!, lines[0]!] };
  const parsed = parseWorkbook(workbookText({ ...workbook, printedSheets: [print!, print!, wrong] }));
  expect('faults' in parsed && parsed.faults.map(({ place, sentence }) => `${place}: ${sentence}`)).toEqual([
    'printedSheets, 1, sheet: This paper of the event stands twice: keep its last print.',
    'printedSheets, 2, event: There is no event with the key "retirement-lunchh". Did you mean "retirement-lunch"?',
    'printedSheets, 2, lines: A line stands twice: name it once.',
  ]);
});

test('what guests ate, once forgotten, is in no print, nor in that of a backup', async () => {
  const { db } = kitchen;
  const dataDir = mkdtempSync(join(tmpdir(), 'workbook-'));
  await notePrint(db, { event, sheet: 'pass', lines }, by);
  await backUp(db, dataDir, by.at);
  const { guests } = (await exportWorkbook(db))!.events.find(({ key }) => key === event)!;
  await forget(db, event, { guests: guests.map(({ key }) => key), names: true, dataDir, ...by });
  const left = lines.filter(({ of }) => of !== 'guest');
  expect((await prints(db)).map((print) => print.lines)).toEqual([left]);
  const folder = join(dataDir, 'backups');
  const files = readdirSync(folder).map((name) => JSON.parse(readFileSync(join(folder, name), 'utf8')));
  expect(files.map(({ printedSheets }) => printedSheets[0].lines)).toEqual([left]);
});

test('they go with their event', async () => {
  const { db } = kitchen;
  await notePrint(db, { event, sheet: 'pass', lines }, by);
  const { revision } = (await read(db, 'event', event))!;
  await remove(db, 'event', event, { revision, ...by });
  expect(await prints(db)).toEqual([]);
});

test('they go too once the kitchen keeps no diets of that day any more, though no guest is listed', async () => {
  const { db, dataDir } = kitchen;
  await notePrint(db, { event, sheet: 'pass', lines }, by);
  const change = (wanted: object) => ({
    change: <D extends object>(doc: D) => ({ ...doc, ...wanted }),
    ...by,
  });
  const lunch = (await read(db, 'event', event))!;
  await edit(db, 'event', event, { revision: lunch.revision, ...change({ guests: [] }) });
  const settings = (await read(db, 'kitchen', 'kitchen'))!;
  await edit(db, 'kitchen', 'kitchen', { revision: settings.revision, ...change({ dietsKeptDays: 30 }) });
  await sql`delete from change`.execute(db);
  await forgetOld(db, { at: new Date('2026-12-20T10:00:00Z'), dataDir });
  expect((await prints(db)).flatMap((print) => print.lines)).toEqual(lines);
  await forgetOld(db, { at: new Date('2027-02-20T10:00:00Z'), dataDir });
  expect((await prints(db)).flatMap((print) => print.lines.map(({ of }) => of))).toEqual(['head', 'dish']);
});
