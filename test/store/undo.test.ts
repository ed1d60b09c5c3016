import { expect, test } from 'vitest';
import type { Recipe } from '../../src/core/facts/recipe.js';
import { create, edit } from '../../src/store/changes.js';
import { read } from '../../src/store/documents.js';
import { undo } from '../../src/store/undo.js';
import { useKitchen } from './kitchen.js';
import { by, other } from './world.js';

const kitchen = useKitchen();

const tart = async () => (await read(kitchen.db, 'recipe', 'tart'))!;
const lineAmount = (key: string, amount: string) => (doc: Recipe) => ({
  ...doc,
  lines: doc.lines.map((line) => (line.key === key ? { ...line, amount } : line)),
});

test('a change that is not kept cannot be taken back', async () => {
  expect(await undo(kitchen.db, 999_999, by)).toEqual({ outcome: 'gone' });
});

test('undo takes one save back and keeps what came after', async () => {
  const { revision } = await tart();
  const first = await edit(kitchen.db, 'recipe', 'tart', { ...by, revision, change: lineAmount('l1', '9') });
  await edit(kitchen.db, 'recipe', 'tart', { ...by, revision: revision + 1, change: lineAmount('l2', '8') });
  if (first.outcome !== 'saved') throw new Error(first.outcome);
  expect(await undo(kitchen.db, first.changeId!, by)).toMatchObject({
    outcome: 'saved',
    revision: revision + 3,
  });
  expect((await tart()).doc.lines.map(({ amount }) => amount)).toEqual(['3/4', '8']);
});

test('undo of what was changed again clashes, and a choice settles it', async () => {
  const { revision } = await tart();
  const first = await edit(kitchen.db, 'recipe', 'tart', { ...by, revision, change: lineAmount('l1', '9') });
  await edit(kitchen.db, 'recipe', 'tart', {
    ...other,
    revision: revision + 1,
    change: lineAmount('l1', '8'),
  });
  if (first.outcome !== 'saved') throw new Error(first.outcome);
  const clash = await undo(kitchen.db, first.changeId!, by);
  expect(clash).toMatchObject({ outcome: 'clash', revision: revision + 2 });
  const choice = { seen: revision + 2, choices: { 'lines/l1': 'yours' as const } };
  expect(await undo(kitchen.db, first.changeId!, { ...by, ...choice })).toMatchObject({ outcome: 'saved' });
  expect((await tart()).doc.lines[0]?.amount).toBe('3/4');
});

test('an example that is changed is the kitchen’s own from then on, until undone', async () => {
  const { db } = kitchen;
  const { doc } = (await read(db, 'ingredient', 'leek'))!;
  await create(db, 'ingredient', { ...doc, key: 'kale', name: 'Kale', origin: 'example' }, by);
  const saved = await edit(db, 'ingredient', 'kale', {
    ...by,
    revision: 1,
    change: (one) => ({ ...one, note: 'Curly.' }),
  });
  expect(saved).toMatchObject({ outcome: 'saved', doc: { origin: 'own', note: 'Curly.' } });
  if (saved.outcome === 'saved') await undo(db, saved.changeId!, by);
  expect((await read(db, 'ingredient', 'kale'))?.doc.origin).toBe('example');
});
