import { expect, test } from 'vitest';
import { create, edit } from '../../src/store/changes.js';
import { read } from '../../src/store/documents.js';
import { history } from '../../src/store/history.js';
import { remove } from '../../src/store/removal.js';
import { undo } from '../../src/store/undo.js';
import { usesOf } from '../../src/store/uses.js';
import { useKitchen } from './kitchen.js';
import { by } from './world.js';

const kitchen = useKitchen();

const revisionOf = async (entity: 'ingredient' | 'recipe' | 'place' | 'event', key: string) =>
  (await read(kitchen.db, entity, key))?.revision ?? 0;
const takeOut = async (entity: 'ingredient' | 'recipe' | 'place' | 'event', key: string) =>
  remove(kitchen.db, entity, key, { ...by, revision: await revisionOf(entity, key) });

test.each([
  ['ingredient', 'flour', [{ entity: 'recipe', key: 'pastry', name: 'Shortcrust' }]],
  ['recipe', 'pastry', [{ entity: 'recipe', key: 'tart', name: 'Leek tart' }]],
  ['recipe', 'tart', [{ entity: 'event', key: 'party', name: 'Party in the barn' }]],
  ['place', 'barn', [{ entity: 'event', key: 'party', name: 'Party in the barn' }]],
] as const)('%s %s is in use: it stays, and what uses it is named', async (entity, key, uses) => {
  expect(await usesOf(kitchen.db, entity, key)).toEqual(uses);
  const removal = await takeOut(entity, key);
  expect(removal).toMatchObject({ outcome: 'refused', problems: [{ code: 'in-use' }], uses });
  expect('problems' in removal && removal.problems[0]?.sentence).toContain(uses[0].name);
  expect(await read(kitchen.db, entity, key)).toBeDefined();
});

test('a variant keeps the recipe it is a variant of', async () => {
  const { doc } = (await read(kitchen.db, 'recipe', 'tart'))!;
  await create(kitchen.db, 'recipe', { ...doc, key: 'plain', name: 'Plain', lines: [], steps: [] }, by);
  await create(kitchen.db, 'recipe', { ...doc, key: 'fancy', name: 'Fancy', variantOf: 'plain' }, by);
  expect(await usesOf(kitchen.db, 'recipe', 'plain')).toEqual([
    { entity: 'recipe', key: 'fancy', name: 'Fancy' },
  ]);
});

test('what nothing uses goes with its rows, is in the history, and comes back by undo with its revision going on', async () => {
  const before = (await read(kitchen.db, 'event', 'party'))!;
  const removal = await takeOut('event', 'party');
  if (removal.outcome !== 'removed') throw new Error(removal.outcome);
  expect(await read(kitchen.db, 'event', 'party')).toBeUndefined();
  expect(await kitchen.db.selectFrom('guest').select('id').execute()).toEqual([]);
  expect((await history(kitchen.db, 'event', 'party'))[0]).toMatchObject({ before: before.doc, after: null });

  expect(await undo(kitchen.db, removal.changeId, by)).toMatchObject({
    outcome: 'saved',
    revision: before.revision + 2,
  });
  expect((await read(kitchen.db, 'event', 'party'))?.doc).toEqual(before.doc);
  expect(await undo(kitchen.db, removal.changeId, by)).toMatchObject({
    outcome: 'refused',
    problems: [{ code: 'back-already' }],
  });
});

test('the home kitchen stays', async () => {
  expect(await takeOut('place', 'home')).toMatchObject({
    outcome: 'refused',
    problems: [{ code: 'home-stays' }],
    uses: [],
  });
});

test('a new document is taken back by undo, unless it was changed since', async () => {
  const { doc } = (await read(kitchen.db, 'ingredient', 'leek'))!;
  const add = async (key: string) => {
    const saved = await create(kitchen.db, 'ingredient', { ...doc, key, name: key }, by);
    return saved.outcome === 'saved' ? saved.changeId! : 0;
  };
  expect(await undo(kitchen.db, await add('kale'), by)).toMatchObject({ outcome: 'removed' });
  expect(await read(kitchen.db, 'ingredient', 'kale')).toBeUndefined();
  const change = await add('chard');
  await edit(kitchen.db, 'ingredient', 'chard', {
    ...by,
    revision: 1,
    change: (one) => ({ ...one, note: 'Red.' }),
  });
  expect(await undo(kitchen.db, change, by)).toMatchObject({
    outcome: 'refused',
    problems: [{ code: 'changed-since' }],
  });
});

test('what somebody saved meanwhile is not removed unseen', async () => {
  const revision = await revisionOf('event', 'party');
  await edit(kitchen.db, 'event', 'party', {
    ...by,
    revision,
    change: (doc) => ({ ...doc, note: 'Later.' }),
  });
  expect(await remove(kitchen.db, 'event', 'party', { ...by, revision })).toMatchObject({
    outcome: 'refused',
  });
});
