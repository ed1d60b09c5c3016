import { expect, test } from 'vitest';
import { allergenMatrix } from '../../../src/core/sheets/allergen-matrix.js';
import { tableCards } from '../../../src/core/sheets/table-cards.js';
import { dish, factsOf, food, labelled, party } from '../small.js';

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

test('every entry of the list stands on every card', () => {
  for (const { contains, may, notChecked, notListed } of cards) {
    const open = notChecked.filter((name) => !may.includes(name) && !name.startsWith('other '));
    expect(contains.length + may.length + open.length + notListed.length).toBe(14);
  }
  expect(cards[2]!.notListed).toHaveLength(14);
});

test('a cell that contains it counts as known, one that may and is in part unread does not', () => {
  const { notKnown, rows } = allergenMatrix(party(1, ['pie', 'toast', 'pear']), facts).value;
  expect(rows[1]!.cells.filter(({ unknown }) => unknown)).toHaveLength(14);
  expect(notKnown).toBe(13);
});
