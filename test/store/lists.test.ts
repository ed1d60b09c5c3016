import { expect, test } from 'vitest';
import { edit } from '../../src/store/changes.js';
import { read } from '../../src/store/documents.js';
import * as events from '../../src/store/events.js';
import { find } from '../../src/store/find.js';
import * as ingredients from '../../src/store/ingredients.js';
import * as places from '../../src/store/places.js';
import * as recipes from '../../src/store/recipes.js';
import { useKitchen } from './kitchen.js';
import { by } from './world.js';

const kitchen = useKitchen();

test('ingredients with the pack that lines are priced at, its latest price and where they are used', async () => {
  const [flour, leek] = await ingredients.list(kitchen.db);
  expect(flour).toMatchObject({
    key: 'flour',
    name: 'Plain flour',
    packs: 0,
    pack: null,
    uses: 1,
    archived: false,
  });
  expect(leek).toMatchObject({
    packs: 1,
    pack: { size: { amount: '5', unit: 'kg' }, price: { date: '2026-11-01', price: 950, guess: false } },
    updatedAt: by.at,
  });
});

test('of several packs none preferred, no pack and no price is shown', async () => {
  const { revision } = (await read(kitchen.db, 'ingredient', 'leek'))!;
  const twoPacks = {
    ...by,
    revision,
    change: <D extends { packs: { key: string; preferred: boolean }[] }>(doc: D) => ({
      ...doc,
      packs: ['sack', 'box'].map((key) => ({ ...doc.packs[0]!, key, preferred: false })),
    }),
  };
  await edit(kitchen.db, 'ingredient', 'leek', twoPacks);
  expect((await ingredients.list(kitchen.db))[1]).toMatchObject({ packs: 2, pack: null });
});

test('recipes with what they make and where they are used', async () => {
  const [pastry, tart] = await recipes.list(kitchen.db);
  expect(pastry).toMatchObject({
    key: 'pastry',
    yield: { portions: null, weight: { amount: '1', unit: 'kg' } },
    inRecipes: 1,
    inEvents: 0,
  });
  expect(tart).toMatchObject({
    key: 'tart',
    yield: { portions: '8' },
    lines: 2,
    steps: 1,
    inRecipes: 0,
    inEvents: 1,
  });
});

test('events of some days, with their guests, place and first course', async () => {
  const party = {
    key: 'party',
    date: '2026-11-28',
    guests: 40,
    place: { key: 'barn', name: 'Barn' },
    firstCourse: { name: 'Main', time: '18:30', dayAfter: false },
    dishes: 1,
  };
  expect(await events.list(kitchen.db)).toMatchObject([party]);
  expect(await events.list(kitchen.db, { from: '2026-11-28', to: '2026-11-28' })).toHaveLength(1);
  expect(await events.list(kitchen.db, { from: '2026-11-29' })).toEqual([]);
  expect(await events.list(kitchen.db, { to: '2026-11-27' })).toEqual([]);
});

test('places, the home kitchen first', async () => {
  expect(await places.list(kitchen.db)).toMatchObject([
    { key: 'home', uses: 0 },
    { key: 'barn', uses: 1 },
  ]);
});

test('names are found whatever case and spacing, guests with their event; signs of the search are letters', async () => {
  const found = await find(kitchen.db, '  LEEK ');
  expect(found.recipes.map(({ key }) => key)).toEqual(['tart']);
  expect(found.ingredients.map(({ key }) => key)).toEqual(['leek']);
  expect((await find(kitchen.db, 'moss')).guests).toMatchObject([{ name: 'Moss', event: { key: 'party' } }]);
  expect((await find(kitchen.db, 'winter')).events).toMatchObject([{ key: 'party', client: 'A. Winter' }]);
  for (const nothing of ['%', '_', '\\', '']) {
    const none = await find(kitchen.db, nothing);
    expect([none.events, none.recipes, none.ingredients, none.guests].flat()).toEqual([]);
  }
});
