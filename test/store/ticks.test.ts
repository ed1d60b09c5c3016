import { expect, test } from 'vitest';
import { parseWorkbook, workbookText } from '../../src/core/exchange/workbook.js';
import { prepPeriod } from '../../src/core/facts/prep-period.js';
import { read } from '../../src/store/documents.js';
import { periods } from '../../src/store/prep-periods.js';
import { remove } from '../../src/store/removal.js';
import { type JobDone, tick, ticksFor, untick } from '../../src/store/ticks.js';
import { exportWorkbook, importWorkbook } from '../../src/store/workbook.js';
import { useKitchen } from './kitchen.js';
import { by, other, smallKitchen } from './world.js';

const kitchen = useKitchen(() => {
  const small = smallKitchen();
  const [party] = small.events;
  const live = { ...party!, state: 'confirmed' as const };
  return { ...small, events: [live, { ...live, key: 'second' }] };
});
const job = (batches: string | null, event = 'party', recipe = 'tart'): JobDone => ({
  date: '2026-11-28',
  recipe,
  step: recipe === 'tart' ? 's1' : null,
  for: [{ event, batches }],
});
const amounts = async () =>
  (await periods(kitchen.db)).flatMap(({ ticks }) =>
    ticks.map(({ event, recipe, batches, who }) => [event, recipe, batches, who]),
  );

test('the first tick begins the period of its week, with the events prepared for in it', async () => {
  const { db } = kitchen;
  await tick(db, job('5'), by);
  expect(await periods(db)).toEqual([
    {
      key: 'from-2026-11-23',
      from: '2026-11-23',
      to: '2026-11-29',
      events: ['party', 'second'],
      ticks: [
        {
          date: '2026-11-28',
          recipe: 'tart',
          step: 's1',
          event: 'party',
          batches: '5',
          who: 'Ines',
          at: '2026-11-20T09:00:00Z',
        },
      ],
    },
  ]);
  expect(await periods(db, { from: '2026-11-29', to: '2026-12-05' })).toMatchObject([{ ticks: [] }]);
  expect(await periods(db, { from: '2026-11-30', to: '2026-12-05' })).toEqual([]);
});

test('the same job twice is one tick, a page opened before takes nothing back, more is more', async () => {
  const { db } = kitchen;
  await tick(db, job('5'), by);
  await tick(db, job('5'), other);
  await tick(db, job('4'), other);
  await tick(db, job(null), other);
  expect(await amounts()).toEqual([['party', 'tart', '5', 'Ines']]);
  await tick(db, job('23/4'), other);
  expect(await amounts()).toEqual([['party', 'tart', '23/4', 'Otto']]);
});

test('two who tick different jobs at once both keep theirs, and one who takes back takes the one back', async () => {
  const { db } = kitchen;
  await Promise.all([
    tick(db, job('5'), by),
    tick(db, job('5', 'second'), other),
    tick(db, job('1', 'party', 'pastry'), other),
  ]);
  expect(await amounts()).toHaveLength(3);
  await untick(db, job('5'));
  await untick(db, job('5'));
  expect(await amounts()).toEqual([
    ['party', 'pastry', '1', 'Otto'],
    ['second', 'tart', '5', 'Otto'],
  ]);
});

test('a tick goes with its event, and one for an event that is gone is left out', async () => {
  const { db } = kitchen;
  await tick(db, job('5'), by);
  expect(await ticksFor(db, 'party')).toBe(1);
  const stored = await read(db, 'event', 'party');
  expect(await remove(db, 'event', 'party', { ...by, revision: stored!.revision })).toMatchObject({
    outcome: 'removed',
  });
  await tick(db, job('5'), by);
  expect(await ticksFor(db, 'party')).toBe(0);
  expect(await periods(db)).toMatchObject([{ events: ['second'], ticks: [] }]);
});

test('ticks leave with the workbook file and come again from it, byte for byte', async () => {
  const { db, dataDir } = kitchen;
  await tick(db, job('23/7'), by);
  await tick(db, job(null, 'second'), other);
  const file = workbookText((await exportWorkbook(db))!);
  expect(file).toContain('"batches": "23/7"');
  const parsed = parseWorkbook(file);
  if (!('workbook' in parsed)) throw new Error(JSON.stringify(parsed.faults));
  await importWorkbook(db, parsed.workbook, { ...by, dataDir });
  expect(workbookText((await exportWorkbook(db))!)).toBe(file);
  expect(await amounts()).toHaveLength(2);
});

test('a file whose periods make no sense is refused, each fault with its place', () => {
  const sent = {
    ...smallKitchen(),
    prepPeriods: [
      { key: 'w', from: '2026-11-23', to: '2026-11-29', events: ['partyy'], ticks: [tickOn('2026-11-30')] },
      { key: 'v', from: '2026-11-29', to: '2026-11-28' },
    ].map((period) => prepPeriod.parse(period)),
  };
  const parsed = parseWorkbook(JSON.stringify(sent));
  expect('faults' in parsed && parsed.faults.map(({ place, sentence }) => `${place}: ${sentence}`)).toEqual([
    'prepPeriods, w, events: There is no event with the key "partyy". Did you mean "party"?',
    'prepPeriods, w, ticks, 0, date: 2026-11-30 is not in this period, which is 2026-11-23 to 2026-11-29.',
    'prepPeriods, w, ticks, 0, event: "party" is not among the events of this period: add it there. Did you mean "partyy"?',
    'prepPeriods, v, to: A period does not end before it begins: write its last day.',
    'prepPeriods, v, from: 2026-11-29 is in the period "w" already: a day is in one period alone.',
  ]);
});

const tickOn = (date: string) => ({
  date,
  recipe: 'tart',
  event: 'party',
  batches: '1',
  who: 'Ines',
  at: '2026-11-28T09:00:00Z',
});
