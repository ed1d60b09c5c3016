import { sql } from 'kysely';
import { expect, test } from 'vitest';
import { readCsv } from '../../src/core/exchange/csv/read.js';
import { readList } from '../../src/core/exchange/prices/rows.js';
import { priceList } from '../../src/core/facts/price-list.js';
import { edit } from '../../src/store/changes.js';
import { chooseFor, draftBy, keepDraft } from '../../src/store/csv-drafts.js';
import { read } from '../../src/store/documents.js';
import { countTogether, history } from '../../src/store/history.js';
import { applyList, planList } from '../../src/store/price-lists.js';
import { undo } from '../../src/store/undo.js';
import { undoTogether } from '../../src/store/undo-together.js';
import { exportWorkbook } from '../../src/store/workbook.js';
import { useKitchen } from './kitchen.js';
import { by, other, smallKitchen } from './world.js';

const list = priceList.parse({
  key: 'harbour',
  supplier: 'Harbour',
  columns: ['name', 'size', 'price'].map((is, i) => ({ is, place: i + 1, heading: is })),
});
const at = useKitchen(() => ({
  ...smallKitchen(),
  kitchen: { ...smallKitchen().kitchen, priceLists: [list] },
}));

const asked = (rows: string) => {
  const csv = readCsv(`name,size,price\n${rows}`);
  if ('sentence' in csv) throw new Error(csv.sentence);
  const day = { date: '2026-11-20', today: '2026-11-25' };
  return { key: 'harbour', read: readList(csv, { list, currency: 'GBP', ...day }), choices: {} };
};
const planned = async (rows: string) => planList(at.db, asked(rows), (await exportWorkbook(at.db))!.kitchen);
const apply = async (rows: string, choices = {}) => {
  const { kitchen } = (await exportWorkbook(at.db))!;
  const { mark } = await planList(at.db, { ...asked(rows), choices }, kitchen);
  return applyList(at.db, { ...asked(rows), choices, draft: 'none', mark }, by);
};
const both = 'Leeks,10 kg,18\nPlain flour,16 kg,14';
const doc = async (key: string) => (await read(at.db, 'ingredient', key))!.doc;

test('a list is taken over as one save, which one undo takes back, and another brings again', async () => {
  const before = await exportWorkbook(at.db);
  const applied = await apply(both);
  if (applied.outcome !== 'saved' || applied.together === null) throw new Error('not saved');
  expect(await countTogether(at.db, applied.together)).toEqual([{ entity: 'ingredient', count: 2 }]);
  expect((await doc('leek')).packs.map(({ supplier, preferred }) => [supplier, preferred])).toEqual([
    ['', true],
    ['Harbour', false],
  ]);
  const after = await exportWorkbook(at.db);
  const undone = await undoTogether(at.db, applied.together, other);
  expect(await exportWorkbook(at.db)).toEqual(before);
  if (undone.outcome !== 'saved') throw new Error('not undone');
  await undoTogether(at.db, undone.together!, other);
  expect(await exportWorkbook(at.db)).toEqual(after);
});

test('the history of each ingredient has it too, and takes back that one alone', async () => {
  await apply(both);
  const [last] = await history(at.db, 'ingredient', 'flour');
  expect((await undo(at.db, last!.id, other)).outcome).toBe('saved');
  expect((await doc('flour')).packs).toEqual([]);
  expect((await doc('leek')).packs).toHaveLength(2);
});

test('undo keeps what was saved since, and takes nothing back when the same place was', async () => {
  const { together } = (await apply(both)) as { together: number };
  const change = async (note: (one: Awaited<ReturnType<typeof doc>>) => Awaited<ReturnType<typeof doc>>) =>
    edit(at.db, 'ingredient', 'leek', {
      revision: (await read(at.db, 'ingredient', 'leek'))!.revision,
      change: note,
      ...other,
    });
  await change((one) => ({ ...one, note: 'from the market' }));
  const undone = await undoTogether(at.db, together, other);
  expect([(await doc('leek')).note, (await doc('leek')).packs.length]).toEqual(['from the market', 1]);
  const again = (undone as { together: number }).together;
  await undoTogether(at.db, again, other);
  const { together: next } = (await apply('Leeks,10 kg,19\nPlain flour,16 kg,15')) as { together: number };
  await change((one) => ({
    ...one,
    packs: one.packs.map((pack) => ({
      ...pack,
      prices: pack.prices.map((paid) => ({ ...paid, price: paid.price + 1 })),
    })),
  }));
  const refused = await undoTogether(at.db, next, other);
  expect(refused.outcome).toBe('refused');
  expect((await doc('flour')).packs[0]?.prices).toHaveLength(2);
});

test('when any part of it fails nothing of it is kept', async () => {
  const before = await exportWorkbook(at.db);
  await sql`alter table csv_draft rename to elsewhere`.execute(at.db);
  await expect(apply(both)).rejects.toThrow();
  await sql`alter table elsewhere rename to csv_draft`.execute(at.db);
  expect(await exportWorkbook(at.db)).toEqual(before);
  expect(await history(at.db, 'ingredient', 'leek')).toEqual([]);
});

test('a mark of other facts is not taken over', async () => {
  const { mark } = await planned(both);
  expect((await apply('Leeks,10 kg,17')).outcome).toBe('saved');
  const late = await applyList(at.db, { ...asked(both), draft: 'none', mark }, by);
  expect(late.outcome).toBe('moved');
});

test('a new ingredient comes with its price, and goes with undo unless something uses it', async () => {
  const rows = 'Sea salt,1 kg,2';
  const { together } = (await apply(rows, { 'sea salt 1 kg': { to: 'new', name: 'Salt' } })) as {
    together: number;
  };
  expect(await doc('salt')).toMatchObject({
    name: 'Salt',
    packs: [{ supplier: 'Harbour', code: 'sea salt 1 kg' }],
  });
  const line = { key: 'l9', amount: '5', amountTo: null, unit: 'g', item: { ingredient: 'salt' } } as const;
  const tart = (await read(at.db, 'recipe', 'tart'))!;
  await edit(at.db, 'recipe', 'tart', {
    revision: tart.revision,
    change: (one) => ({ ...one, lines: [...one.lines, { ...one.lines[0]!, ...line }] }),
    ...by,
  });
  expect((await undoTogether(at.db, together, other)).outcome).toBe('refused');
});

test('a draft is kept with its choices for a week', async () => {
  const key = await keepDraft(at.db, { kind: 'price-list', text: 'a', settings: { one: 1 } }, by);
  await chooseFor(at.db, key, { one: 2 });
  expect(await draftBy(at.db, 'price-list', key)).toMatchObject({ text: 'a', settings: { one: 2 } });
  expect(await draftBy(at.db, 'tables', key)).toBeUndefined();
  const later = { who: 'Otto', at: new Date(by.at.getTime() + 8 * 86_400_000) };
  await keepDraft(at.db, { kind: 'price-list', text: 'b', settings: {} }, later);
  expect(await draftBy(at.db, 'price-list', key)).toBeUndefined();
});
