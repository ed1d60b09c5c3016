import fc from 'fast-check';
import { expect, test } from 'vitest';
import { tablePlan } from '../../../../src/core/exchange/csv/plan.js';
import { type Csv, readCsv } from '../../../../src/core/exchange/csv/read.js';
import { headings, tableNames, tableText } from '../../../../src/core/exchange/csv/tables.js';
import type { Workbook } from '../../../../src/core/facts/facts.js';
import { anyWorkbook } from '../../../arbitraries/index.js';
import { exampleKitchen } from '../../../world.js';

const read = (text: string): Csv => {
  const csv = readCsv(text, { rows: 100_000, letters: 50_000_000 });
  if ('sentence' in csv) throw new Error(csv.sentence);
  return csv;
};

const planned = (text: string, kitchen: Workbook) => {
  const plan = tablePlan(read(text), kitchen);
  if ('sentence' in plan) throw new Error(plan.sentence);
  return plan;
};

/** The kitchen with what a table holds in it. */
const taken = (text: string, kitchen: Workbook): Workbook => {
  const plan = planned(text, kitchen);
  expect(plan.refused).toEqual([]);
  const list = plan.entity === 'ingredient' ? 'ingredients' : 'recipes';
  const docs = new Map<string, { key: string }>(kitchen[list].map((one) => [one.key, one]));
  for (const { doc } of [...plan.fresh, ...plan.changed]) docs.set(doc.key, doc);
  return { ...kitchen, [list]: [...docs.values()] };
};

const empty = (kitchen: Workbook): Workbook => ({ ...kitchen, ingredients: [], recipes: [], events: [] });

/** Chance kitchens hold what the rules refuse (a key twice is none of it); a kitchen is one that its file keeps. */
const comesBack = (kitchen: Workbook) => {
  const texts = tableNames.map((name) => tableText(name, kitchen));
  for (const text of texts) {
    const again = planned(text, kitchen);
    expect([again.fresh, again.changed, again.refused]).toEqual([[], [], []]);
  }
  const back = texts.reduce(
    (into, text) => (read(text).rows.length > 1 ? taken(text, into) : into),
    empty(kitchen),
  );
  expect(tableNames.map((name) => tableText(name, back))).toEqual(texts);
  const sorted = (list: readonly { key: string }[]) => list.toSorted((a, b) => (a.key < b.key ? -1 : 1));
  expect(sorted(back.ingredients)).toEqual(sorted(kitchen.ingredients));
  expect(sorted(back.recipes)).toEqual(sorted(kitchen.recipes));
};

test('the example kitchen comes back from its tables as it was', () => {
  comesBack(exampleKitchen());
});

test('a kitchen made by chance comes back from its tables as it was', () => {
  fc.assert(fc.property(anyWorkbook, comesBack), { numRuns: 60 });
});

test('a changed cell changes that field alone; a field without its columns stays as it is', () => {
  const kitchen = exampleKitchen();
  const plan = planned('key,section\nleek,Greens\n', kitchen);
  const [{ doc, before }] = plan.changed as [(typeof plan.changed)[number]];
  expect(doc).toEqual({ ...before, section: 'Greens', origin: 'own' });
});

test('what does not fit is refused with its line, and what to write', () => {
  const kitchen = exampleKitchen();
  expect(planned('key,name,frozen\nnew-one,New one,perhaps\n', kitchen).refused).toEqual([
    { line: 2, name: 'New one', sentence: expect.stringContaining('frozen: ') },
  ]);
  expect(
    planned('ingredient,"pack, key","price, price"\nnosuch,p,3\n', kitchen).refused[0]?.sentence,
  ).toContain('There is no ingredient with the key “nosuch”');
  expect(planned('key,name\nleek,Plain flour\n', kitchen).refused[0]).toMatchObject({ line: 2 });
  expect(tablePlan(read('a,b\n1,2\n'), kitchen)).toHaveProperty('sentence');
  expect(tablePlan(read('key,name,colour\nx,X,red\n'), kitchen)).toEqual({
    sentence: 'There is no column “colour” in ingredients.csv. Take it out, or mend its heading.',
  });
});

test('another brand in prices.csv is as if the label were not read; another price is not', () => {
  const kitchen = exampleKitchen();
  const butter = kitchen.ingredients.find(({ key }) => key === 'butter')!;
  const [first] = butter.packs as [(typeof butter.packs)[number]];
  const row = (brand: string) =>
    `ingredient,"pack, key","pack, brand","price, date","price, price"\nbutter,${first.key},${brand},2026-10-01,9.99\n`;
  const [branded] = planned(row('Stile End'), kitchen).changed;
  expect(branded?.doc).toMatchObject({ allergens: {}, traits: { dairy: 'yes' } });
  const [priced] = planned(row(first.brand), kitchen).changed;
  expect(priced?.doc).toMatchObject({ allergens: butter.allergens, traits: butter.traits });
});

test('every column has a heading of its own', () => {
  for (const name of tableNames) expect(new Set(headings[name]).size).toBe(headings[name].length);
});
