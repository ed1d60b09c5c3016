import { setTimeout as sleep } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { openDatabase } from '../../src/store/database.js';
import { read } from '../../src/store/documents.js';
import { importWorkbook } from '../../src/store/workbook.js';
import { by, smallKitchen } from '../store/world.js';
import { newFolder, startWorkbook } from './program.js';

/** The small kitchen with a party long over, whose guest has a diet, and thirty days that diets are kept. */
const longOver = () => {
  const small = smallKitchen();
  const [party] = small.events;
  const [guest] = party!.guests;
  const moss = {
    ...guest!,
    key: 'coeliac-moss',
    name: 'Moss',
    diets: ['coeliac'],
    other: 'zwiebelfrei-quux',
  };
  return {
    ...small,
    kitchen: { ...small.kitchen, dietsKeptDays: 30 },
    events: [{ ...party!, date: '2020-11-28', guests: [moss] }],
  };
};

test('at the start diets of parties long over are forgotten, and the log has figures alone', async () => {
  const dataDir = newFolder();
  const before = await openDatabase({ dataDir });
  await importWorkbook(before.db, longOver(), { ...by, dataDir });
  await before.close();
  const { child, said, closed } = await startWorkbook({ DATA_DIR: dataDir, LOG_LEVEL: 'info' });
  while (!said.out.includes('diets of past events forgotten')) await sleep(50);
  child.kill('SIGTERM');
  await closed;
  const line = said.out.split('\n').find((one) => one.includes('diets of past events forgotten'))!;
  expect(JSON.parse(line)).toMatchObject({ events: 1, guests: 1, saves: 0, backups: 0 });
  expect(`${said.out}${said.err}`).not.toMatch(/coeliac|quux|moss|party/i);
  const after = await openDatabase({ dataDir });
  const { guests } = (await read(after.db, 'event', 'party'))!.doc;
  expect(guests).toMatchObject([{ name: 'Moss', answered: false, diets: [], other: '' }]);
  expect(guests[0]!.key).toBe('forgotten-1');
  await after.close();
});
