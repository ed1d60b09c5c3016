import { expect, test } from 'vitest';
import { whileUnchanged } from '../../src/store/unchanged.js';
import { useKitchen } from './kitchen.js';
import { snapshotNow, undisturbed } from './undisturbed.js';

const kitchen = useKitchen();

let asked = 0;
const answer = (name: string, snapshot?: string) =>
  whileUnchanged(kitchen.db, name, async () => ({
    snapshot: snapshot ?? (await snapshotNow(kitchen.db)),
    answer: ++asked,
  }));
const note = (words: string) =>
  kitchen.db.updateTable('place').set({ note: words }).where('key', '=', 'barn').execute();

test('an answer stands, each question its own, until any row of any table changes', async () => {
  const [one, again, other] = await undisturbed(kitchen.db, async () => [
    await answer('one'),
    await answer('one'),
    await answer('other'),
  ]);
  expect([again, other === one]).toEqual([one, false]);
  await note('Mind the step.');
  expect(await answer('one')).toBeGreaterThan(other!);
});

test('what was read before a save that ended meanwhile is not given to the next who asks', async () => {
  const before = await snapshotNow(kitchen.db);
  await note('Mind the gate.');
  const late = await answer('late', before);
  expect(await answer('late')).toBe(late + 1);
});
