import { afterAll, beforeAll, expect, test } from 'vitest';
import { event } from '../../src/core/facts/event.js';
import { ingredient } from '../../src/core/facts/ingredient.js';
import { kitchen } from '../../src/core/facts/kitchen.js';
import { place } from '../../src/core/facts/place.js';
import { recipe } from '../../src/core/facts/recipe.js';
import { create, edit } from '../../src/store/changes.js';
import { read } from '../../src/store/documents.js';
import { eventFacts } from '../../src/store/facts.js';
import { type TestDatabase, testDatabase } from '../database.js';

let database: TestDatabase;
beforeAll(async () => {
  database = await testDatabase();
});
afterAll(() => database.close());

const by = { who: 'Ines', at: new Date('2026-11-20T09:00:00Z') };

test('a kitchen is kept, read and changed', async () => {
  const { db } = database;
  expect(
    await create(
      db,
      'kitchen',
      kitchen.parse({ name: 'Mill Lane', currency: 'GBP', timeZone: 'Europe/London' }),
      by,
    ),
  ).toMatchObject({ outcome: 'saved' });
  expect(
    await create(db, 'place', place.parse({ key: 'home', name: 'Home', kind: 'home' }), by),
  ).toMatchObject({ outcome: 'saved' });
  const leek = ingredient.parse({
    key: 'leek',
    name: 'Leeks',
    packs: [
      {
        key: 'sack',
        size: { amount: '5', unit: 'kg' },
        preferred: true,
        prices: [{ key: 'p1', date: '2026-10-01', price: 900 }],
      },
    ],
  });
  expect(await create(db, 'ingredient', leek, by)).toMatchObject({ outcome: 'saved' });
  const tart = recipe.parse({
    key: 'tart',
    name: 'Leek tart',
    yield: { portions: '8' },
    lines: [{ key: 'l1', amount: '3/4', unit: 'kg', item: { ingredient: 'leek' } }],
    steps: [{ key: 's1', words: 'Bake' }],
  });
  expect(await create(db, 'recipe', tart, by)).toMatchObject({ outcome: 'saved' });
  const party = event.parse({
    key: 'party',
    name: 'Party',
    date: '2026-11-28',
    place: 'home',
    groups: [{ key: 'adults', name: 'Adults', guests: 40 }],
    courses: [{ key: 'main', name: 'Main', time: '18:30', dishes: [{ key: 'd1', recipe: 'tart' }] }],
  });
  expect(await create(db, 'event', party, by)).toMatchObject({ outcome: 'saved', revision: 1 });
  expect((await read(db, 'event', 'party'))?.doc).toEqual(party);
  expect((await read(db, 'recipe', 'tart'))?.doc).toEqual(tart);
  expect((await read(db, 'ingredient', 'leek'))?.doc).toEqual(leek);
  const saved = await edit(db, 'event', 'party', {
    ...by,
    revision: 1,
    change: (doc) => ({ ...doc, groups: [{ ...doc.groups[0]!, guests: 46 }] }),
  });
  expect(saved).toMatchObject({ outcome: 'saved', revision: 2 });
  const facts = await eventFacts(db, ['party']);
  expect(facts?.events[0]?.groups[0]?.guests).toBe(46);
  expect(facts?.facts.ingredients.get('leek')).toEqual(leek);
});
