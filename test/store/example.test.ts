import { expect, test } from 'vitest';
import { event } from '../../src/core/facts/event.js';
import { create, edit } from '../../src/store/changes.js';
import { load, read } from '../../src/store/documents.js';
import { openExample, removeExample } from '../../src/store/example.js';
import { exampleKitchen } from '../world.js';
import { useKitchen } from './kitchen.js';
import { by } from './world.js';

const kitchen = useKitchen(exampleKitchen);

const count = async () =>
  (
    await Promise.all(
      (['place', 'ingredient', 'recipe', 'event'] as const).map((one) => load(kitchen.db, one)),
    )
  ).map(({ length }) => length);

test('an unused example goes whole but for the home kitchen', async () => {
  const { stayed } = await removeExample(kitchen.db, by);
  expect(stayed).toMatchObject([{ entity: 'place', uses: [] }]);
  expect(await count()).toEqual([1, 0, 0, 0]);
});

test('what a party of one’s own uses stays, through any depth, and so does what was changed', async () => {
  const { db } = kitchen;
  const { recipes, events, ingredients } = exampleKitchen();
  const recipe = recipes.find(({ lines }) => lines.some(({ item }) => 'component' in item))!;
  const mine = event.parse({
    key: 'mine',
    name: 'My own party',
    date: '2027-01-01',
    place: events[0]!.place,
    groups: [{ key: 'all', name: 'All', guests: 9 }],
    courses: [{ key: 'main', name: 'Main', time: '18:00', dishes: [{ key: 'd', recipe: recipe.key }] }],
  });
  expect(await create(db, 'event', mine, by)).toMatchObject({ outcome: 'saved' });
  const unused = ingredients.find(
    ({ key }) => !recipe.lines.some(({ item }) => 'ingredient' in item && item.ingredient === key),
  )!;
  const { revision } = (await read(db, 'ingredient', unused.key))!;
  await edit(db, 'ingredient', unused.key, {
    ...by,
    revision,
    change: (doc) => ({ ...doc, note: 'Mine now.' }),
  });

  const { removed, stayed } = await removeExample(db, by);
  expect(removed).toBeGreaterThan(0);
  expect(stayed.find(({ key }) => key === recipe.key)?.uses).toEqual([
    { entity: 'event', key: 'mine', name: 'My own party' },
  ]);
  for (const { item } of recipe.lines) {
    if ('ingredient' in item) expect(await read(db, 'ingredient', item.ingredient)).toBeDefined();
    else expect(await read(db, 'recipe', item.component)).toBeDefined();
  }
  expect((await read(db, 'ingredient', unused.key))?.doc).toMatchObject({ note: 'Mine now.', origin: 'own' });
  expect((await load(db, 'event')).map(({ key }) => key)).toEqual(['mine']);
});

test('the example is opened in place of what is there, which is kept in a backup', async () => {
  const backup = await openExample(kitchen.db, { ...by, dataDir: kitchen.dataDir });
  expect(backup).toMatch(/backups.workbook-2026-11-20T090000-[0-9a-f]{6}\.json$/);
  expect(await count()).toEqual(
    ['places', 'ingredients', 'recipes', 'events'].map((list) => exampleKitchen()[list as 'places'].length),
  );
});
