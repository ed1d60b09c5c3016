import { expect, test } from 'vitest';
import { afterwards } from '../../src/core/facts/afterwards.js';
import type { Event } from '../../src/core/facts/event.js';
import { acceptedOffers } from '../../src/store/accepted-offers.js';
import { edit } from '../../src/store/changes.js';
import { read } from '../../src/store/documents.js';
import { notedParties } from '../../src/store/parties-held.js';
import { accept } from '../../src/store/quote-answers.js';
import { repricedSince } from '../../src/store/repriced.js';
import { useKitchen } from './kitchen.js';
import { issued, today } from './quote-world.js';
import { by } from './world.js';

const kitchen = useKitchen();

const change = async (make: (doc: Event) => Event) =>
  edit(kitchen.db, 'event', 'party', {
    ...by,
    revision: (await read(kitchen.db, 'event', 'party'))!.revision,
    change: make,
  });

test('ingredients with a price since a day come whole, with the prices before it', async () => {
  const [leek, ...none] = await repricedSince(kitchen.db, '2026-10-31');
  expect(none).toEqual([]);
  expect(leek?.packs[0]?.prices.map(({ key }) => key)).toEqual(['p1', 'p2']);
  expect(await repricedSince(kitchen.db, '2026-11-01')).toEqual([]);
});

test('a price taken back, and an ingredient no longer wanted, moved nothing', async () => {
  const leek = async () => (await read(kitchen.db, 'ingredient', 'leek'))!;
  await edit(kitchen.db, 'ingredient', 'leek', {
    ...by,
    revision: (await leek()).revision,
    change: (doc) => ({
      ...doc,
      packs: doc.packs.map((pack) => ({ ...pack, prices: pack.prices.filter(({ key }) => key === 'p1') })),
    }),
  });
  expect(await repricedSince(kitchen.db, '2026-10-31')).toEqual([]);
  await edit(kitchen.db, 'ingredient', 'leek', {
    ...by,
    revision: (await leek()).revision,
    change: (doc) => ({ ...doc, archived: true }),
  });
  expect(await repricedSince(kitchen.db, '2026-01-01')).toEqual([]);
});

test('parties that are done and noted, and no others', async () => {
  expect(await notedParties(kitchen.db)).toEqual([]);
  await change((doc) => ({ ...doc, afterwards: afterwards.parse({ note: 'Fewer tarts.' }) }));
  expect(await notedParties(kitchen.db)).toEqual([]);
  await change((doc) => ({ ...doc, state: 'done' }));
  expect(await notedParties(kitchen.db)).toEqual(['party']);
  await change((doc) => ({ ...doc, archived: true }));
  expect(await notedParties(kitchen.db)).toEqual([]);
});

test('what a client accepted, without what it was worked out from', async () => {
  const { doc, revision } = await issued(kitchen.db);
  expect((await acceptedOffers(kitchen.db, ['party'])).size).toBe(0);
  await accept(kitchen.db, doc.key, { ...by, day: today, revision, taken: doc.offer.options[0]!.key });
  const found = await acceptedOffers(kitchen.db, ['party', 'other']);
  expect([...found.keys()]).toEqual(['party']);
  expect(found.get('party')).toMatchObject({ number: 1, offer: { guests: 40 } });
  expect(await acceptedOffers(kitchen.db, [])).toEqual(new Map());
});
