import { expect, test } from 'vitest';
import type { Event } from '../../src/core/facts/event.js';
import type { Recipe } from '../../src/core/facts/recipe.js';
import { create, edit, resolve } from '../../src/store/changes.js';
import { read } from '../../src/store/documents.js';
import { history } from '../../src/store/history.js';
import { counter } from './counter.js';
import { useKitchen } from './kitchen.js';
import { by, other } from './world.js';

const kitchen = useKitchen();

const tart = async () => (await read(kitchen.db, 'recipe', 'tart'))!;
const lineAmount = (key: string, amount: string) => (doc: Recipe) => ({
  ...doc,
  lines: doc.lines.map((line) => (line.key === key ? { ...line, amount } : line)),
});
const guests = (count: number) => (doc: Event) => ({
  ...doc,
  groups: doc.groups.map((group) => ({ ...group, guests: count })),
});

test('a save moves the revision on and is written into the history', async () => {
  const { revision, doc: before } = await tart();
  const saved = await edit(kitchen.db, 'recipe', 'tart', { ...by, revision, change: lineAmount('l1', '1') });
  expect(saved).toMatchObject({ outcome: 'saved', revision: revision + 1, merged: [] });
  const [last] = await history(kitchen.db, 'recipe', 'tart');
  expect(last).toMatchObject({
    who: 'Ines',
    at: by.at,
    revision: revision + 1,
    before,
    after: (await tart()).doc,
  });
  expect(await tart()).toMatchObject({ updatedBy: 'Ines', updatedAt: by.at });
});

test('saving what stands already changes nothing', async () => {
  const { revision } = await tart();
  const saved = await edit(kitchen.db, 'recipe', 'tart', { ...by, revision, change: (doc) => doc });
  expect(saved).toMatchObject({ outcome: 'saved', revision, changeId: null });
  expect(await history(kitchen.db, 'recipe', 'tart')).toEqual([]);
});

test('two people change different lines: both stand', async () => {
  const { revision } = await tart();
  await edit(kitchen.db, 'recipe', 'tart', { ...other, revision, change: lineAmount('l1', '1') });
  const saved = await edit(kitchen.db, 'recipe', 'tart', {
    ...by,
    revision,
    change: lineAmount('l2', '500'),
  });
  expect(saved).toMatchObject({ outcome: 'saved', revision: revision + 2, merged: ['lines/l1'] });
  expect((await tart()).doc.lines.map(({ amount }) => amount)).toEqual(['1', '500']);
});

test('two people change one line: nothing is saved, both are shown, and a choice settles it', async () => {
  const { revision } = await tart();
  await edit(kitchen.db, 'recipe', 'tart', { ...other, revision, change: lineAmount('l1', '1') });
  const clash = await edit(kitchen.db, 'recipe', 'tart', { ...by, revision, change: lineAmount('l1', '2') });
  if (clash.outcome !== 'clash') throw new Error(clash.outcome);
  expect(clash).toMatchObject({ theirsBy: 'Otto', theirsAt: other.at, revision: revision + 1 });
  expect(clash.merge.clashes).toMatchObject([
    { path: 'lines/l1', base: { amount: '3/4' }, yours: { amount: '2' }, theirs: { amount: '1' } },
  ]);
  expect((await tart()).doc.lines[0]?.amount).toBe('1');

  const shown = { ...by, base: revision, seen: clash.revision, yours: clash.yours };
  const none = await resolve(kitchen.db, 'recipe', 'tart', { ...shown, choices: {} });
  expect(none.outcome).toBe('clash');
  const settled = await resolve(kitchen.db, 'recipe', 'tart', { ...shown, choices: { 'lines/l1': 'yours' } });
  expect(settled).toMatchObject({ outcome: 'saved', revision: revision + 2 });
  expect((await tart()).doc.lines[0]?.amount).toBe('2');
});

test('a choice made on a merge that somebody overtook is asked again', async () => {
  const { revision } = await tart();
  await edit(kitchen.db, 'recipe', 'tart', { ...other, revision, change: lineAmount('l1', '1') });
  await edit(kitchen.db, 'recipe', 'tart', {
    ...other,
    revision: revision + 1,
    change: lineAmount('l1', '5'),
  });
  const { doc } = await tart();
  const yours = lineAmount('l1', '2')(doc);
  const overtaken = {
    ...by,
    base: revision,
    seen: revision + 1,
    yours,
    choices: { 'lines/l1': 'yours' as const },
  };
  expect(await resolve(kitchen.db, 'recipe', 'tart', overtaken)).toMatchObject({
    outcome: 'clash',
    revision: revision + 2,
  });
});

test('of twenty saves of one field at once, one stands and the rest clash', async () => {
  const { revision } = (await read(kitchen.db, 'event', 'party'))!;
  const outcomes = await Promise.all(
    Array.from({ length: 20 }, (_, n) =>
      edit(kitchen.db, 'event', 'party', { ...by, revision, change: guests(41 + n) }).then(
        ({ outcome }) => outcome,
      ),
    ),
  );
  expect(outcomes.toSorted()).toEqual([...Array(19).fill('clash'), 'saved']);
  expect((await read(kitchen.db, 'event', 'party'))?.revision).toBe(revision + 1);
});

test('twenty lines added at once by twenty people all stand', async () => {
  const { revision } = await tart();
  const addLine = (n: number) => (doc: Recipe) => ({
    ...doc,
    lines: [...doc.lines, { ...doc.lines[0]!, key: `new-${n}` }],
  });
  await Promise.all(
    Array.from({ length: 20 }, (_, n) =>
      edit(kitchen.db, 'recipe', 'tart', { ...by, revision, change: addLine(n) }),
    ),
  );
  expect((await tart()).doc.lines).toHaveLength(22);
});

test('what is gone, taken or too old is said, not saved', async () => {
  const { db } = kitchen;
  const { doc, revision } = await tart();
  expect(await edit(db, 'recipe', 'no-such', { ...by, revision: 1, change: (one) => one })).toEqual({
    outcome: 'gone',
  });
  expect(await create(db, 'recipe', doc, by)).toMatchObject({
    outcome: 'refused',
    problems: [{ code: 'key-taken' }],
  });
  const old = await edit(db, 'recipe', 'tart', {
    ...by,
    revision: revision - 1,
    change: lineAmount('l1', '1'),
  });
  expect(old).toMatchObject({ outcome: 'refused', problems: [{ code: 'stale' }] });
});

test('two hundred lines are changed in as many queries as one', async () => {
  const { db } = kitchen;
  const { doc } = await tart();
  const line = doc.lines[0]!;
  const lines = (amount: string, count: number) =>
    Array.from({ length: count }, (_, n) => ({ ...line, key: `n${n}`, amount }));
  const cost = async (revision: number, change: (one: Recipe) => Recipe) => {
    const queries = counter();
    expect(await edit(db.withPlugin(queries), 'recipe', 'tart', { ...by, revision, change })).toMatchObject({
      outcome: 'saved',
    });
    return queries.count;
  };
  const { revision } = await tart();
  const one = await cost(revision, (recipe) => ({ ...recipe, lines: [...lines('1', 1), recipe.lines[1]!] }));
  expect(
    await cost(revision + 1, (recipe) => ({ ...recipe, lines: [...lines('2', 199), recipe.lines[1]!] })),
  ).toBeLessThanOrEqual(one);
});
