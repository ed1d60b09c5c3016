import { sql } from 'kysely';
import { expect, test } from 'vitest';
import { edit } from '../../src/store/changes.js';
import { read } from '../../src/store/documents.js';
import { history } from '../../src/store/history.js';
import { accept, decline, issue, takeAnswerBack } from '../../src/store/quote-answers.js';
import { bringBack, saveDraft, withdraw } from '../../src/store/quote-drafts.js';
import { quotes, readQuote } from '../../src/store/quotes.js';
import { useKitchen } from './kitchen.js';
import { drafted, fortyAtTwenty, issued, today } from './quote-world.js';
import { by, other } from './world.js';

const kitchen = useKitchen();
const statesNow = async () =>
  (await quotes(kitchen.db, ['party'])).map(({ doc }) => `${doc.number} ${doc.state}`);
const eventNow = async () => (await read(kitchen.db, 'event', 'party'))!;

test('quotes of an event are numbered from 1, and pressed twice a draft is begun once', async () => {
  const { db } = kitchen;
  const all = await Promise.all([drafted(db), drafted(db), drafted(db)]);
  expect(new Set(all.map(({ doc }) => doc.key)).size).toBe(1);
  expect((await drafted(db, 1)).doc.number).toBe(2);
  expect(await statesNow()).toEqual(['1 draft', '2 draft']);
});

test('a draft saved by two is stale for the second, who is given what stands', async () => {
  const { db } = kitchen;
  const { doc, revision } = await drafted(db);
  const mine = { ...fortyAtTwenty, title: 'Winter party' };
  expect(await saveDraft(db, doc.key, { ...by, offer: mine, revision })).toMatchObject({ outcome: 'saved' });
  const late = await saveDraft(db, doc.key, { ...other, offer: { ...mine, guests: 9 }, revision });
  expect(late).toMatchObject({
    outcome: 'stale',
    quote: { doc: { offer: mine }, revision: revision + 1, updatedBy: 'Ines' },
  });
  expect((await readQuote(db, doc.key))?.doc.offer).toEqual(mine);
  expect(await saveDraft(db, 'none', { ...by, offer: mine, revision })).toEqual({ outcome: 'gone' });
});

test('issuing keeps the day and the facts without any guest, and the enquiry becomes quoted in its history', async () => {
  const { db } = kitchen;
  const { revision } = await eventNow();
  await edit(db, 'event', 'party', {
    ...by,
    revision,
    change: (doc) => ({
      ...doc,
      note: 'Moss sits by the door',
      guests: doc.guests.map((guest) => ({ ...guest, avoids: ['flour'] })),
      courses: doc.courses.map((course) => ({
        ...course,
        dishes: course.dishes.map((dish) => ({ ...dish, keptFor: ['moss'], keptApart: 'tray for Moss' })),
      })),
    }),
  });
  const { doc } = await issued(db);
  expect(doc).toMatchObject({ state: 'issued', issued: today, offer: fortyAtTwenty });
  expect(doc.basis?.served.recipes.map(({ key }) => key).sort()).toEqual(['pastry', 'tart']);
  expect(
    doc.basis?.served.ingredients.find(({ key }) => key === 'leek')?.packs[0]?.prices.at(-1)?.price,
  ).toBe(950);
  expect(JSON.stringify(doc.basis)).not.toMatch(/moss/i);
  expect((await eventNow()).doc.state).toBe('quoted');
  expect((await history(db, 'event', 'party'))[0]).toMatchObject({ after: { state: 'quoted' }, who: 'Ines' });
});

test('an issued quote never changes, whatever SQL says; how it was answered does', async () => {
  const { db } = kitchen;
  const { doc } = await issued(db);
  for (const change of [
    sql`offer = offer || '{"title":"Other"}'`,
    sql`issued = '2026-01-01'`,
    sql`number = 7`,
    sql`basis = '{}'`,
    sql`withdrawn_at = now()`,
  ])
    await expect(sql`update quote set ${change} where key = ${doc.key}`.execute(db)).rejects.toThrow(
      /does not change|quote_withdrawn/,
    );
  const stored = (await readQuote(db, doc.key))!;
  expect(stored.doc).toEqual(doc);
  const late = await saveDraft(db, doc.key, { ...by, offer: fortyAtTwenty, revision: stored.revision });
  expect(late.outcome).toBe('stale');
  expect((await withdraw(db, doc.key, { ...by, revision: stored.revision })).outcome).toBe('stale');
});

test('a later quote replaces those still open when issued, and the accepted one when accepted', async () => {
  const { db } = kitchen;
  const first = await issued(db);
  const second = await issued(db, 1);
  expect(await statesNow()).toEqual(['1 replaced', '2 issued']);
  const day = '2026-11-21';
  await accept(db, second.doc.key, { ...by, revision: second.revision, taken: 'o1', day });
  expect((await eventNow()).doc.state).toBe('confirmed');
  const third = await issued(db, 2);
  expect(await statesNow()).toEqual(['1 replaced', '2 accepted', '3 issued']);
  await accept(db, third.doc.key, { ...by, revision: third.revision, taken: 'o1', day });
  expect(await statesNow()).toEqual(['1 replaced', '2 replaced', '3 accepted']);
  expect((await readQuote(db, third.doc.key))?.doc).toMatchObject({ answered: day, taken: 'o1' });
  const again = (await readQuote(db, first.doc.key))!;
  const step = { ...by, revision: again.revision, taken: 'o1', day };
  expect((await accept(db, first.doc.key, step)).outcome).toBe('stale');
});

test('an answer noted by mistake is taken back, and one given on an old page is refused', async () => {
  const { db } = kitchen;
  const { doc, revision } = await issued(db);
  expect(await decline(db, doc.key, { ...by, revision, day: today })).toMatchObject({ outcome: 'saved' });
  expect((await decline(db, doc.key, { ...by, revision, day: today })).outcome).toBe('stale');
  await takeAnswerBack(db, doc.key, { ...by, revision: revision + 1 });
  expect((await readQuote(db, doc.key))?.doc).toMatchObject({ state: 'issued', answered: null, taken: null });
});

test('a quote without a price, or open until a day that has passed, is not issued', async () => {
  const { db } = kitchen;
  const { doc, revision } = await drafted(db);
  const [option] = fortyAtTwenty.options;
  const bare = { ...fortyAtTwenty, validUntil: '2026-11-19', options: [{ ...option!, lines: [] }] };
  await saveDraft(db, doc.key, { ...by, offer: bare, revision });
  const refused = await issue(db, doc.key, { ...by, today, revision: revision + 1 });
  expect(refused).toMatchObject({
    outcome: 'refused',
    sentences: [expect.stringContaining('no price yet'), expect.stringContaining('has passed')],
  });
  expect(await statesNow()).toEqual(['1 draft']);
});

test('a withdrawn draft leaves its number free and comes back under the next', async () => {
  const { db } = kitchen;
  const { doc, revision } = await drafted(db);
  await withdraw(db, doc.key, { ...by, revision });
  expect(await statesNow()).toEqual([]);
  await drafted(db);
  await bringBack(db, doc.key, by);
  expect(await statesNow()).toEqual(['1 draft', '2 draft']);
  expect((await readQuote(db, doc.key))?.doc.number).toBe(2);
});
