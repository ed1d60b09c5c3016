import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { edit } from '../../src/store/changes.js';
import { read } from '../../src/store/documents.js';
import { forgetOld } from '../../src/store/forget-old.js';
import { history } from '../../src/store/history.js';
import { backUp } from '../../src/store/workbook.js';
import { useKitchen } from './kitchen.js';
import { by, smallKitchen } from './world.js';

/** The small kitchen's party, and one like it a year later. */
const kitchen = useKitchen(() => {
  const small = smallKitchen();
  const [party] = small.events;
  const [guest] = party!.guests;
  const moss = { ...guest!, count: 3, diets: ['coeliac'], avoids: ['leek'], other: 'zwiebelfrei-quux' };
  return {
    ...small,
    events: [
      { ...party!, date: '2026-11-28', guests: [moss] },
      { ...party!, key: 'party-next', name: 'Next', date: '2027-11-28', guests: [moss] },
    ],
  };
});

const keep = async (days: number | null) => {
  const { revision } = (await read(kitchen.db, 'kitchen', 'kitchen'))!;
  const change = <D extends object>(doc: D) => ({ ...doc, dietsKeptDays: days });
  await edit(kitchen.db, 'kitchen', 'kitchen', { ...by, revision, change });
};
const at = (day: string) => new Date(`${day}T10:00:00Z`);
const forgetOn = (day: string) => forgetOld(kitchen.db, { at: at(day), dataDir: kitchen.dataDir });
const guestOf = async (event: string) => (await read(kitchen.db, 'event', event))!.doc.guests[0]!;
const nothing = { events: 0, guests: 0, saves: 0, backups: 0 };

// The party is on 28 November. Kept 30 days, its diets stand on 28 December and are gone on the 29th.
test('diets older than the kitchen keeps them go from rows, history and backups; counts stay', async () => {
  expect(await forgetOn('2030-01-01')).toEqual(nothing);
  await keep(30);
  const { revision } = (await read(kitchen.db, 'event', 'party'))!;
  await edit(kitchen.db, 'event', 'party', {
    ...by,
    revision,
    change: (doc) => ({ ...doc, guests: doc.guests.map((one) => ({ ...one, name: 'Moss again' })) }),
  });
  await backUp(kitchen.db, kitchen.dataDir, by.at);
  expect(await forgetOn('2026-12-28')).toEqual(nothing);
  expect((await guestOf('party')).diets).toEqual(['coeliac']);
  expect(await forgetOn('2026-12-29')).toEqual({ events: 1, guests: 1, saves: 1, backups: 1 });
  expect(await guestOf('party')).toMatchObject({
    count: 3,
    answered: false,
    diets: [],
    avoids: [],
    other: '',
  });
  expect(await guestOf('party-next')).toMatchObject({ diets: ['coeliac'] });
  const folder = join(kitchen.dataDir, 'backups');
  for (const file of readdirSync(folder)) {
    const { events } = JSON.parse(readFileSync(join(folder, file), 'utf8'));
    expect(events.map(({ guests }: { guests: { diets?: string[] }[] }) => guests[0]!.diets ?? [])).toEqual([
      [],
      ['coeliac'],
    ]);
  }
  const saves = await history(kitchen.db, 'event', 'party');
  expect(JSON.stringify(saves)).not.toMatch(/coeliac|quux/);
  expect(await forgetOn('2026-12-30')).toEqual(nothing);
});

test('what stands in a backup or the history alone goes too, and a party put off keeps its diets', async () => {
  await keep(0);
  await backUp(kitchen.db, kitchen.dataDir, by.at);
  const change = async (make: (guests: never[]) => unknown, more: object = {}) => {
    const { revision } = (await read(kitchen.db, 'event', 'party'))!;
    await edit(kitchen.db, 'event', 'party', {
      ...by,
      revision,
      change: (doc) => ({ ...doc, ...more, guests: make(doc.guests as never) as typeof doc.guests }),
    });
  };
  await change(() => [], { date: '2027-01-05' });
  expect(await forgetOn('2027-01-05')).toEqual(nothing);
  expect(await forgetOn('2027-01-06')).toEqual({ events: 1, guests: 1, saves: 1, backups: 1 });
  expect(await forgetOn('2027-01-07')).toEqual(nothing);
});
