import { expect, test } from 'vitest';
import { edit } from '../../src/store/changes.js';
import { read } from '../../src/store/documents.js';
import { kitchenFacts } from '../../src/store/facts.js';
import { counter } from './counter.js';
import { useKitchen } from './kitchen.js';
import { undisturbed } from './undisturbed.js';
import { by } from './world.js';

/* All recipes and ingredients at one moment: the very same facts until something is saved, and then those that stand. */
const kitchen = useKitchen();

test('the whole kitchen is read once, and again only after a save', async () => {
  const first = (await kitchenFacts(kitchen.db))!;
  expect([...first.recipes.keys()]).toEqual(['pastry', 'tart']);
  expect([...first.ingredients.keys()]).toEqual(['flour', 'leek']);
  const again = await undisturbed(kitchen.db, async () => {
    await kitchenFacts(kitchen.db);
    const asked = counter();
    const facts = await kitchenFacts(kitchen.db.withPlugin(asked));
    return { facts, count: asked.count, before: await kitchenFacts(kitchen.db) };
  });
  expect([again.facts === again.before, again.count]).toEqual([true, 1]);
  const { revision } = (await read(kitchen.db, 'ingredient', 'leek'))!;
  await edit(kitchen.db, 'ingredient', 'leek', {
    ...by,
    revision,
    change: (doc) => ({
      ...doc,
      packs: doc.packs.map((pack) => ({
        ...pack,
        prices: [...pack.prices, { key: 'dearer', date: '2026-11-09', price: 1100, guess: false }],
      })),
    }),
  });
  const after = (await kitchenFacts(kitchen.db))!;
  expect(after.ingredients.get('leek')!.packs[0]!.prices.map(({ price }) => price)).toEqual([1100]);
  expect(after.recipes.get('tart')).toBe(first.recipes.get('tart'));
  expect(after.ingredients.get('flour')).toBe(first.ingredients.get('flour'));
});
