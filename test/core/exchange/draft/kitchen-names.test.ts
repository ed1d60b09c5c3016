import { expect, test } from 'vitest';
import { KitchenNames } from '../../../../src/core/exchange/draft/kitchen-names.js';

const named = (...names: string[]) => names.map((name) => ({ key: name, name, archived: false }));

const names = new KitchenNames({
  ingredients: [
    ...named(
      'Butter, unsalted',
      'Plain flour',
      'Rye flour',
      'Onions',
      'Crown squash',
      'Milk chocolate',
      'Stock',
    ),
    { key: 'Old salt', name: 'Old salt', archived: true },
  ],
  recipes: named('Stock', 'Lemon curd', 'Onion gravy'),
});

const matched = (name: string): string => {
  const match = names.match(name);
  if (match.kind === 'none') return 'none';
  return match.kind === 'exact'
    ? `exact ${match.known.text}`
    : `${match.kind} ${match.known.map(({ text }) => text).join(' | ')}`;
};

test.each([
  ['onion', 'exact Onions'],
  ['ONIONS', 'exact Onions'],
  ['unsalted butter', 'exact Butter, unsalted'],
  ['butter unsalted', 'exact Butter, unsalted'],
  ['lemon curd', 'exact Lemon curd'],
  ['Stock (recipe)', 'exact Stock (recipe)'],
])('%s is one thing of this kitchen: %s', (name, found) => expect(matched(name)).toBe(found));

test.each([
  ['stock', 'both Stock (ingredient) | Stock (recipe)'],
  ['butter', 'near Butter, unsalted'],
  ['flour', 'near Rye flour | Plain flour'],
  ['crown prince squash', 'near Crown squash'],
  ['crwon squash', 'near Crown squash'],
  ['red onions', 'near Onions'],
])('%s may be what the kitchen has, and is asked: %s', (name, found) => expect(matched(name)).toBe(found));

test.each(['saffron', 'chocolate milk shake powder of the valley', '', '   ', '💥'])(
  '%s is nothing this kitchen has',
  (name) => expect(matched(name)).toBe('none'),
);

test('what has the same words in another order is no exact match', () =>
  expect(matched('chocolate milk')).toBe('near Milk chocolate'));

test('what is archived is found by its name, and never offered', () => {
  expect(matched('old salt')).toBe('exact Old salt');
  expect(matched('salt')).toBe('none');
  expect(names.offered.map(({ text }) => text)).not.toContain('Old salt');
});

test('a large kitchen is looked through in a moment', () => {
  const many = named(...Array.from({ length: 12_000 }, (_, i) => `Sort ${i % 97} of leaf ${i}`));
  const large = new KitchenNames({ ingredients: many, recipes: [] });
  for (let i = 0; i < 200; i++) large.match(`unknwon leaf ${i}x of sorts`);
  expect(large.match('sort 5 of leaf 5').kind).toBe('exact');
});
