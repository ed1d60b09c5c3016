import { expect, test } from 'vitest';
import { readCsv } from '../../../../src/core/exchange/csv/read.js';
import { revisionsOf, withPrices } from '../../../../src/core/exchange/prices/apply.js';
import { guessColumns } from '../../../../src/core/exchange/prices/guess.js';
import type { Choices } from '../../../../src/core/exchange/prices/match.js';
import { type Plan, planOf, riseOf } from '../../../../src/core/exchange/prices/plan.js';
import { readList } from '../../../../src/core/exchange/prices/rows.js';
import { type Ingredient, ingredient } from '../../../../src/core/facts/ingredient.js';
import { preferredPack } from '../../../../src/core/weighing.js';

const today = '2026-11-25';
const pack = (key: string, size: string, more: object = {}) => {
  const [amount, unit] = size.split(' ');
  return {
    key,
    supplier: 'Harbour',
    size: { amount, unit },
    prices: [{ key: 'p', date: '2026-11-01', price: 900 }],
    ...more,
  };
};
const leek = ingredient.parse({ key: 'leek', name: 'Leek', packs: [pack('box', '5 kg', { code: 'L1' })] });
const egg = ingredient.parse({ key: 'egg', name: 'Egg', packs: [pack('tray', '30 each', { code: 'E1' })] });

/** What a list changes: head, then one row a line, for the list of 20 November. */
const plan = (
  rows: string,
  ingredients: Ingredient[] = [leek, egg],
  choices: Choices = {},
  leftOut: string[] = [],
): Plan => {
  const csv = readCsv(`Code,Description,Pack size,Price,Date,Brand\n${rows}`);
  if ('sentence' in csv) throw new Error(csv.sentence);
  const list = { ...guessColumns(csv, today), decimal: 'point', days: 'day-first' } as const;
  const read = readList(csv, { list, currency: 'GBP', date: '2026-11-20', today });
  return planOf(read, {
    ingredients,
    kitchen: { cup: 'metric' },
    list: { supplier: 'harbour ', leftOut },
    choices,
  });
};
const after = (made: Plan, doc: Ingredient): Ingredient =>
  revisionsOf(made)
    .filter(({ key }) => key === doc.key)
    .reduce((now, one) => withPrices(now, one, 'Harbour'), doc);

test('9.00 on 1 November; 9.90 on the 20th is a rise of ten per cent, and stands from then on', () => {
  const made = plan('L1,Leeks long,5 kg,9.90,,');
  expect(made.changed.map((one) => [one.before?.price, one.row.price, riseOf(one)?.toString()])).toEqual([
    [900, 990, '10'],
  ]);
  expect(after(made, leek).packs[0]?.prices.map(({ date, price }) => [date, price])).toEqual([
    ['2026-11-01', 900],
    ['2026-11-20', 990],
  ]);
});

test('the same price writes nothing', () => {
  const made = plan('L1,Leeks,5000 g,9.00,,');
  expect([made.same.length, revisionsOf(made)]).toEqual([1, []]);
});

test('a price of October goes into the history, and September’s of a list of several days too, each once', () => {
  const made = plan(
    'L1,Leeks,5 kg,8.00,1/10/2026,\nL1,Leeks,5 kg,7.00,1/9/2026,\nL1,Leeks,5 kg,9.50,15/11/2026,',
  );
  expect([made.older.length, made.changed.length]).toEqual([2, 1]);
  const now = after(made, leek);
  expect(now.packs[0]?.prices).toHaveLength(4);
  expect(plan('L1,Leeks,5 kg,8.00,1/10/2026,', [now]).same).toHaveLength(1);
});

test('a guess gives way to a price; one with a later day stands', () => {
  const guessed = (date: string) =>
    ingredient.parse({
      ...leek,
      packs: [pack('box', '5 kg', { code: 'L1', prices: [{ key: 'p', date, price: 900, guess: true }] })],
    });
  expect(plan('L1,Leeks,5 kg,9.00,,', [guessed('2026-11-01')]).fresh).toHaveLength(1);
  expect(plan('L1,Leeks,5 kg,9.00,,', [guessed('2026-11-24')]).older).toHaveLength(1);
});

test('another size or brand under the same code is a new pack; lines stay priced at the old one', () => {
  const made = plan('L1,Leeks,4 kg,9.00,,');
  expect(made.fresh[0]?.match.instead?.key).toBe('box');
  const now = after(made, leek);
  expect(now.packs.map(({ code, size }) => [code, size.amount])).toEqual([
    ['', '5'],
    ['L1', '4'],
  ]);
  expect(preferredPack(now)?.key).toBe('box');
  const branded = ingredient.parse({ ...leek, packs: [pack('box', '5 kg', { code: 'L1', brand: 'Fell' })] });
  expect(plan('L1,Leeks,5 kg,9.00,,Other', [branded]).fresh[0]?.match.instead?.key).toBe('box');
  expect(plan('L1,Leeks,5 kg,9.50,,FELL', [branded]).changed).toHaveLength(1);
});

test('a name without a code matches the ingredient of that name, whatever its plural, and is remembered by code', () => {
  const made = plan('X7,LEEKS,2 kg,4.00,,');
  expect(made.fresh[0]?.match).toMatchObject({ how: 'name', pack: null });
  expect(after(made, leek).packs[1]).toMatchObject({ code: 'X7', supplier: 'Harbour', preferred: false });
  const uncoded = ingredient.parse({ ...leek, packs: [pack('box', '5 kg')] });
  const linked = plan('X7,Leek,5 kg,9.00,,', [uncoded]);
  expect(linked.same).toHaveLength(1);
  expect(after(linked, uncoded).packs[0]?.code).toBe('X7');
  expect(after(linked, uncoded).packs[0]?.prices).toHaveLength(1);
});

test('what nobody matched is offered what all its words may mean; choices and what is left out hold', () => {
  const row = 'S9,Leek baby trimmed,1 kg,5.00,,';
  expect(plan(row).unmatched[0]?.near).toEqual([{ key: 'leek', name: 'Leek' }]);
  expect(plan(row, undefined, { S9: { to: 'ingredient', ingredient: 'leek' } }).fresh).toHaveLength(1);
  expect(plan(row, undefined, { S9: { to: 'out' } }).leftOut).toHaveLength(1);
  expect(plan(row, undefined, {}, ['S9']).leftOut).toHaveLength(1);
  expect(plan(row, undefined, { S9: { to: 'ask' } }, ['S9']).unmatched).toHaveLength(1);
  const fresh = plan(row, undefined, { S9: { to: 'new', name: 'Baby leek' } });
  expect(revisionsOf(fresh)[0]).toMatchObject({ key: null, name: 'Baby leek' });
  expect(plan('L1,Leeks,5 kg,9.50,,', undefined, { L1: { to: 'ask' } }).unmatched).toHaveLength(1);
});

test('a code that is said to mean another ingredient leaves the pack it was on', () => {
  const made = plan('L1,Eggs,30 each,6.00,,', undefined, { L1: { to: 'ingredient', ingredient: 'egg' } });
  expect(after(made, leek).packs[0]?.code).toBe('');
  expect(after(made, egg).packs.some(({ code }) => code === 'L1')).toBe(true);
});

test.each([
  ['L1,Leeks,5 kg,9,,\nL1,Leeks,5 kg,9.10,,', 'Line 2 has a price of that day for this pack already.'],
  [
    'Q,Eggs,1 kg,9,,',
    'A pack in kg can’t be compared with the pack of Egg in each: what one each weighs is not known.',
  ],
  ['L1,Leeks,box,9,,', 'The pack size “box” can’t be read.'],
  ['L1,Leeks,5 kg,9,1/1/2027,', 'The date “1/1/2027” is still to come.'],
  [',,5 kg,9,,', 'There is neither a name nor a code.'],
  ['L1,Leeks,5 kg,,,', 'There is no price.'],
])('“%s” is refused with its line and why', (rows, sentence) => {
  const made = plan(rows);
  expect(made.refused.at(-1)?.sentence).toContain(sentence);
  expect(made.refused.at(-1)?.line).toBe(rows.split('\n').length + 1);
});

test('several new packs of one that had none leave it to the cook which lines are priced at', () => {
  const flour = ingredient.parse({ key: 'flour', name: 'Flour' });
  const made = plan('F1,Flour,16 kg,14,,\nF2,Flour,1.5 kg,2,,', [flour]);
  expect(after(made, flour).packs.map(({ preferred }) => preferred)).toEqual([false, false]);
});

test('one code for a piece and a case of it is two packs; two codes of one name and size are two as well', () => {
  const onion = ingredient.parse({ key: 'onion', name: 'Onion' });
  const made = plan('O1,Onion,1 kg,1.20,,\nO1,Onion,10 kg,9,,\nO2,Onion,10 kg,11,,', [onion]);
  const now = after(made, onion);
  expect(now.packs.map(({ code, size }) => [code, size.amount])).toEqual([
    ['O1 1 kg', '1'],
    ['O1 10 kg', '10'],
    ['O2', '10'],
  ]);
});
