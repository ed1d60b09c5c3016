import { expect, test } from 'vitest';
import { allergenMatrix } from '../../../src/core/sheets/allergen-matrix.js';
import { allergenMatrixSheet } from '../../../src/core/sheets/allergen-matrix-sheet.js';
import { dish, factsOf, food, labelled, party } from '../small.js';

const flour = food('flour', {
  allergens: {
    ...labelled().allergens,
    wheat: { state: 'free', source: 'cook', date: null, by: 'J.' },
    barley: { state: 'contains', source: 'label', date: '2026-03-04', by: 'J.' },
  },
});
const facts = factsOf([
  dish('bread', '1 portion', ['1 g flour', '1 portion @poolish']),
  dish('poolish', '1 portion', ['1 g flour', '1 g mix']),
  flour,
  food('mix', { allergens: { ...labelled().allergens, milk: { state: 'may', date: '2025-12-31' } } }),
  food('unused', labelled({ contains: ['milk'] })),
]);
const event = party(10, ['bread'], {
  eatsAll: 9,
  guests: [{ key: 'ana', name: 'Ana', group: 'adults', diets: ['no-milk'] }],
});

// Barley was read on 4 March; of wheat the cook says there is none. The flour brings gluten in by its barley, so the 4th
// of March is the day.
test('the source beside a state is the entry that says so', () => {
  const [, sources] = allergenMatrixSheet(allergenMatrix(event, facts)).tables;
  const gluten = sources!.rows.filter((row) => row.allergen === 'Cereals containing gluten');
  expect(gluten.map(({ state, source, date, through, gs1 }) => [state, source, date, through, gs1])).toEqual([
    ['contains', 'label', '2026-03-04', '', 'AW'],
    ['contains', 'label', '2026-03-04', 'Poolish', 'AW'],
  ]);
});

test('the label days are those of what is in the dishes', () => {
  const { value } = allergenMatrix(event, facts);
  expect(value.labels).toEqual({ first: '2025-12-31', last: '2026-03-04' });
  expect(allergenMatrix(party(10, []), facts).value.labels).toBeUndefined();
});

test('the matrix in words, and who can eat what', () => {
  const [matrix, , coverage] = allergenMatrixSheet(allergenMatrix(event, facts)).tables;
  expect(matrix!.rows[0]).toMatchObject({ gluten: 'contains', milk: 'may contain', eggs: 'not listed' });
  expect(coverage!.rows).toMatchObject([
    { guest: 'Ana', verdict: 'may contain what they avoid', because: 'Mix' },
  ]);
});

test('the list in force is the one of the kitchen', () => {
  for (const [allergenList, count] of [
    ['eu', 14],
    ['us', 9],
  ] as const) {
    const { value } = allergenMatrix(event, { ...facts, kitchen: { ...facts.kitchen, allergenList } });
    expect(value.rows[0]!.cells).toHaveLength(count);
  }
});

test('no word on the sheet says more than the labels do', () => {
  const text = JSON.stringify(allergenMatrixSheet(allergenMatrix(event, facts)));
  expect(text).not.toMatch(/\bsafe\b|suitable for|guarantee/i);
});

// GS1 (open code list T4078 for the allergens): AM milk, AE eggs, AW gluten cereals; contains, may contain and free from
// are its three values. What nobody has read is none of these, so it has a value of our own.
test('every dish by allergen code, and what is not known is never free from', () => {
  const open = factsOf([
    dish('bread', '1 portion', ['1 g flour', '1 g mix', '1 g stock']),
    food('flour', labelled({ contains: ['wheat'] })),
    food('mix', labelled({ may: ['milk'] })),
    food('stock', { allergens: { eggs: { state: 'free', source: 'cook' } } }),
  ]);
  const { tables } = allergenMatrixSheet(allergenMatrix(event, open));
  const rows = tables.find(({ name }) => name === 'containment')!.rows;
  const by = (gs1: string) => rows.find((row) => row.gs1 === gs1)!;
  expect(by('AW').containment).toBe('contains');
  expect(by('AM')).toMatchObject({ containment: 'may contain', open: 'yes' });
  expect(by('AE')).toMatchObject({ containment: 'free from', ground: 'labels and the cook’s word' });
  expect(by('AF').containment).toBe('not known');
  expect(rows.map(({ gs1 }) => gs1).join(' ')).toBe('AW AC AE AF AP AY AM AN BC BM AS AU NL UM');
});

// The leek was never on a label: the cook says there is nothing on the list in it. So its soup is free of milk by the
// cook's word, and bread of flour alone by the label that was read. Nobody buys tap water, so it takes nothing away.
test('a dish is free by labels, or in part by the cook’s word, and the matrix says which', () => {
  const word = { allergens: { ...labelled().allergens, milk: { state: 'free', source: 'cook', by: 'R.' } } };
  const both = factsOf([
    dish('soup', '1 portion', ['1 g leek', '1 g flour']),
    dish('bread', '1 portion', ['1 g flour', '1 g water']),
    food('leek', word),
    food('water', { ...word, notBought: true }),
    food('flour', labelled()),
  ]);
  const [matrix] = allergenMatrixSheet(allergenMatrix(party(1, ['soup', 'bread']), both)).tables;
  expect(matrix!.rows.map(({ milk, eggs }) => [milk, eggs])).toEqual([
    ['not listed, in part by the cook’s word', 'not listed'],
    ['not listed', 'not listed'],
  ]);
});
