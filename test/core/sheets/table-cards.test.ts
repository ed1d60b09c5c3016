import { expect, test } from 'vitest';
import { byKey } from '../../../src/core/facts/facts.js';
import { recipe } from '../../../src/core/facts/recipe.js';
import { allergenMatrix } from '../../../src/core/sheets/allergen-matrix.js';
import { fullLabel } from '../../../src/core/sheets/full-label.js';
import { tableCards } from '../../../src/core/sheets/table-cards.js';
import { dish, factsOf, food, labelled, party, steps } from '../small.js';

const facts = factsOf([
  dish('pie', '1 portion', ['1 g flour', '1 g cheese']),
  dish('toast', '1 portion', ['1 g flour', '1 g spread']),
  dish('pear', '1 portion', ['1 g fruit']),
  food('flour', labelled({ contains: ['wheat', 'barley'], may: ['soya'] })),
  food('cheese', labelled({ contains: ['milk'] })),
  food('spread'),
  food('fruit', labelled()),
]);
const cards = tableCards(allergenMatrix(party(1, ['pie', 'toast', 'pear']), facts).value);

test('a card says in words what a dish contains and may contain, and which cereals they are', () => {
  expect(cards[0]).toMatchObject({
    course: 'Main',
    dish: 'Pie',
    contains: ['cereals containing gluten (wheat, barley)', 'milk'],
    may: ['soya'],
    notChecked: [],
  });
});

test('what nobody has read is said to be not checked, also where it may contain it for sure', () => {
  const [, toast] = cards;
  expect(toast!.contains).toEqual(['cereals containing gluten (wheat, barley)']);
  expect(toast!.may).toEqual(['soya']);
  expect(toast!.notChecked).toContain('soya');
  expect(toast!.notChecked).toContain('milk');
  // The flour's wheat and barley are named; whether the spread brings rye or oats nobody knows.
  expect(toast!.notChecked).toContain('other cereals containing gluten');
  expect(toast!.notListed).toEqual([]);
});

test('what may be in it beside what is, of one entry, is not lost under it', () => {
  const nutty = factsOf([
    dish('cake', '1 portion', ['1 g almonds', '1 g cocoa', '1 g paste']),
    dish('tart', '1 portion', ['1 g almonds', '1 g cocoa']),
    food('almonds', labelled({ contains: ['almond'], may: ['hazelnut'] })),
    food('cocoa', { allergens: { ...labelled().allergens, nuts: { state: 'may' } } }),
    food('paste', labelled({ contains: ['hazelnut'] })),
  ]);
  const [cake, tart] = tableCards(allergenMatrix(party(1, ['cake', 'tart']), nutty).value);
  expect([tart!.contains, tart!.may]).toEqual([['nuts (almond)'], ['other nuts (hazelnut)']]);
  expect([cake!.contains, cake!.may]).toEqual([['nuts (almond, hazelnut)'], ['other nuts']]);
  const { value } = fullLabel(nutty.recipes.get('tart')!, '2026-12-02', nutty);
  expect(value.may).toEqual(['other nuts (hazelnut)']);
});

test('every entry of the list stands on every card', () => {
  for (const { contains, may, notChecked, notListed } of cards) {
    const open = notChecked.filter((name) => !may.includes(name) && !name.startsWith('other '));
    expect(
      contains.length +
        may.filter((name) => !name.startsWith('other ')).length +
        open.length +
        notListed.length,
    ).toBe(14);
  }
  expect(cards[2]!.notListed).toHaveLength(14);
});

test('a cell that contains it counts as known, one that may and is in part unread does not', () => {
  const { notKnown, rows } = allergenMatrix(party(1, ['pie', 'toast', 'pear']), facts).value;
  expect(rows[1]!.cells.filter(({ unknown }) => unknown)).toHaveLength(14);
  expect(notKnown).toBe(13);
});

// The pie and the toast share the board and the tray: the toast is handled with the milk and the cereals of the pie. The
// flour may bring soya to both, and of the spread nobody knows, which the pie's card says. The pear shares nothing.
test('what a dish is handled with is said apart, once for all equipment that brings the same', () => {
  const shared = steps({ equipment: ['Board', 'Tray'] });
  const all = [...facts.recipes.values()].map((one) => (one.key === 'pear' ? one : { ...one, ...shared }));
  const here = { ...facts, recipes: byKey(all.map((one) => recipe.parse(one))) };
  const [pie, toast, pear] = tableCards(allergenMatrix(party(1, ['pie', 'toast', 'pear']), here).value);
  expect(toast!.handled).toEqual(['gluten, milk and what may contain soya (shared board and tray)']);
  expect(pie!.handled).toEqual([
    'gluten, what may contain soya and food that is not checked (shared board and tray)',
  ]);
  expect(pear!.handled).toEqual([]);
  expect(pear!.contains).toEqual([]);
});
