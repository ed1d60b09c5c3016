import { sql } from 'kysely';
import { expect, test } from 'vitest';
import { read } from '../../src/store/documents.js';
import { issuePaper, readPaper } from '../../src/store/numbered-papers.js';
import { recordPayment, strikePayment } from '../../src/store/payment-saves.js';
import { numberedPapers, payments } from '../../src/store/payments.js';
import { remove } from '../../src/store/removal.js';
import { useKitchen } from './kitchen.js';
import { drafted, invoice, issued, today } from './quote-world.js';
import { by } from './world.js';

const kitchen = useKitchen();
const deposit = { event: 'party', date: today, amount: 20_000, back: false, words: 'deposit, by bank' };

test('papers issued at once are numbered without a gap and none twice, each kind by itself', async () => {
  const { db } = kitchen;
  const made = await Promise.all(
    Array.from({ length: 12 }, (_, at) =>
      issuePaper(db, at % 3 === 0 ? 'receipt' : 'invoice', 'party', ({ number }) => ({
        paper: { ...invoice(number), kind: at % 3 === 0 ? 'receipt' : 'invoice' },
      })),
    ),
  );
  expect(made.every((one) => 'paper' in one)).toBe(true);
  const all = await numberedPapers(db);
  const numbers = (kind: string) => all.filter((one) => one.kind === kind).map(({ number }) => number);
  expect(numbers('invoice')).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
  expect(numbers('receipt')).toEqual([1, 2, 3, 4]);
  expect(await readPaper(db, 'invoice', 8)).toEqual(invoice(8));
  expect(await readPaper(db, 'credit', 1)).toBeUndefined();
});

test('a paper that was refused, or failed, takes no number', async () => {
  const { db } = kitchen;
  expect(await issuePaper(db, 'invoice', 'party', () => ({ sentence: 'no' }))).toEqual({ sentence: 'no' });
  const failing = issuePaper(db, 'invoice', 'party', () => {
    throw new Error('not worked out');
  });
  await expect(failing).rejects.toThrow('not worked out');
  await issuePaper(db, 'invoice', 'party', ({ number }) => ({ paper: invoice(number) }));
  expect((await numberedPapers(db)).map(({ number }) => number)).toEqual([1]);
});

test('a numbered paper never changes', async () => {
  const { db } = kitchen;
  await issuePaper(db, 'invoice', 'party', ({ number }) => ({ paper: invoice(number) }));
  await expect(sql`update numbered_paper set number = 4`.execute(db)).rejects.toThrow('does not change');
  await expect(sql`update numbered_paper set paper = '{}'`.execute(db)).rejects.toThrow('does not change');
});

test('a payment is recorded once however often it is pressed, and one struck out stays to be seen', async () => {
  const { db } = kitchen;
  const both = await Promise.all([1, 2].map(() => recordPayment(db, deposit, { ...by, known: 0 })));
  expect(both.map(({ outcome }) => outcome).sort()).toEqual(['saved', 'stale']);
  await recordPayment(db, { ...deposit, amount: 500 }, { ...by, known: 1 });
  const [first] = await payments(db, ['party']);
  await strikePayment(db, first!.key, today);
  expect(await payments(db, ['party'])).toMatchObject([
    { amount: 20_000, struck: today },
    { amount: 500, struck: null },
  ]);
  await strikePayment(db, first!.key, null);
  expect((await payments(db, ['party'])).map(({ struck }) => struck)).toEqual([null, null]);
  expect(await strikePayment(db, 'none', today)).toEqual({ outcome: 'gone' });
});

test.each([
  ['an issued quote', () => issued(kitchen.db)],
  ['a payment', () => recordPayment(kitchen.db, deposit, { ...by, known: 0 })],
  ['a numbered paper', () => issuePaper(kitchen.db, 'invoice', 'party', () => ({ paper: invoice(1) }))],
])('an event with %s is not removed', async (_, make) => {
  const { db } = kitchen;
  await make();
  const { revision } = (await read(db, 'event', 'party'))!;
  const removal = await remove(db, 'event', 'party', { ...by, revision });
  expect(removal).toMatchObject({ outcome: 'refused', problems: [{ code: 'has-papers' }] });
  expect(await read(db, 'event', 'party')).toBeDefined();
});

test('one with a draft alone is removed with it', async () => {
  const { db } = kitchen;
  await drafted(db);
  const { revision } = (await read(db, 'event', 'party'))!;
  expect((await remove(db, 'event', 'party', { ...by, revision })).outcome).toBe('removed');
});
