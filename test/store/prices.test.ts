import { expect, test } from 'vitest';
import type { Ingredient } from '../../src/core/facts/ingredient.js';
import { edit } from '../../src/store/changes.js';
import { read } from '../../src/store/documents.js';
import { loadFacts } from '../../src/store/facts.js';
import { undo } from '../../src/store/undo.js';
import { useKitchen } from './kitchen.js';
import { by } from './world.js';

const kitchen = useKitchen();

const leek = async () => (await read(kitchen.db, 'ingredient', 'leek'))!;
const change = async (make: (doc: Ingredient) => Ingredient) =>
  edit(kitchen.db, 'ingredient', 'leek', { ...by, revision: (await leek()).revision, change: make });
const onPack =
  (make: (pack: Ingredient['packs'][number]) => Ingredient['packs'][number]) => (doc: Ingredient) => ({
    ...doc,
    packs: doc.packs.map(make),
  });
const kept = () =>
  kitchen.db
    .selectFrom('price')
    .select(({ eb }) => ['key', 'price', eb('withdrawn_at', 'is', null).as('live')])
    .orderBy('id')
    .execute();

test('a price is added, never rewritten: what leaves the document is marked withdrawn', async () => {
  await change(
    onPack((pack) => ({
      ...pack,
      prices: [...pack.prices, { key: 'p3', date: '2026-12-01', price: 990, guess: false }],
    })),
  );
  await change(
    onPack((pack) => ({
      ...pack,
      prices: pack.prices.map((one) => (one.key === 'p2' ? { ...one, price: 940 } : one)),
    })),
  );
  await change(onPack((pack) => ({ ...pack, prices: pack.prices.filter(({ key }) => key !== 'p1') })));
  expect(await kept()).toEqual([
    { key: 'p1', price: 900, live: false },
    { key: 'p2', price: 950, live: false },
    { key: 'p3', price: 990, live: true },
    { key: 'p2', price: 940, live: true },
  ]);
  expect((await leek()).doc.packs[0]?.prices.map(({ price }) => price)).toEqual([940, 990]);
});

test('a pack that is dropped stays with its prices, and undo brings both back', async () => {
  const { doc } = await leek();
  const saved = await change((one) => ({ ...one, packs: [] }));
  expect((await leek()).doc.packs).toEqual([]);
  expect(await kitchen.db.selectFrom('pack').select(['key', 'supplier']).execute()).toHaveLength(1);
  if (saved.outcome === 'saved') await undo(kitchen.db, saved.changeId!, by);
  expect((await leek()).doc).toEqual(doc);
  expect((await kept()).map(({ live }) => live)).toEqual([false, false, true, true]);
});

test('sheets get of each pack the latest price alone; of one day, the last entered', async () => {
  const sameDay = { key: 'p0', date: '2026-11-01', price: 875, guess: true };
  await change(onPack((pack) => ({ ...pack, prices: [...pack.prices, sameDay] })));
  const facts = await loadFacts(kitchen.db, { recipes: ['tart'] });
  expect(facts?.ingredients.get('leek')?.packs[0]?.prices).toEqual([sameDay]);
});

test('the currency is fixed once a price stands', async () => {
  const { revision } = (await read(kitchen.db, 'kitchen', 'kitchen'))!;
  const euros = {
    ...by,
    revision,
    change: <D extends { currency: string }>(doc: D) => ({ ...doc, currency: 'EUR' }),
  };
  expect(await edit(kitchen.db, 'kitchen', 'kitchen', euros)).toMatchObject({
    outcome: 'refused',
    problems: [{ code: 'currency-fixed' }],
  });
});
