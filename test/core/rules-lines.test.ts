import { describe, expect, test } from 'vitest';
import { ingredient } from '../../src/core/facts/ingredient.js';
import { recipe } from '../../src/core/facts/recipe.js';
import { type Known, nothingKnown } from '../../src/core/known.js';
import { refusals } from '../../src/core/rules.js';

const known: Known = {
  ...nothingKnown,
  ingredients: new Set(['flour', 'water']),
  recipes: new Map([['starter', { name: 'Starter', components: [], variantOf: null }]]),
};

type Fields = Record<string, unknown>;
const line = (key: string, fields: Fields = {}) => ({
  key,
  amount: '1',
  unit: 'kg',
  item: { ingredient: 'flour' },
  ...fields,
});
const why = (...lines: Fields[]) => {
  const doc = recipe.parse({ key: 'bread', name: 'Bread', yield: { portions: '8' }, lines });
  return refusals('recipe', doc, known).map(({ code, subject }) => `${code} ${subject.field}`);
};
const flour = (key: string, amount: string, fields: Fields = {}) =>
  line(key, { amount, unit: 'percent', scales: 'flour', ...fields });

describe('a line is refused, each for its reason and at its field', () => {
  test.each<[string, Fields]>([
    ['range lines/l1/amount', { amount: '3', amountTo: '2' }],
    ['range lines/l1/amount', { amount: '3', amountTo: '3.0' }],
    ['range lines/l1/amount', { amount: null, amountTo: '3', scales: 'taste' }],
    ['cooked-how lines/l1/cooked', { stated: 'cooked' }],
    ['cooked-weight lines/l1/unit', { stated: 'cooked', cooked: 'boiled', unit: 'cup' }],
    ['cooked-weight lines/l1/unit', { stated: 'cooked', cooked: 'boiled', unit: 'each' }],
    [
      'cooked-component lines/l1/stated',
      { stated: 'cooked', cooked: 'baked', item: { component: 'starter' } },
    ],
    ['share-scales lines/l1/scales', { unit: 'percent', scales: 'pieces' }],
    ['share-scales lines/l1/scales', { unit: 'percent', scales: 'herb' }],
    ['unit-spelt lines/l1/unit', { unit: 'pct' }],
  ])('%s', (said, fields) => {
    expect(why(line('l1', fields))).toEqual([said]);
  });
});

describe('flour in per cent', () => {
  test('comes to 100 by itself', () => {
    expect(why(flour('l1', '80'), flour('l2', '25'))).toEqual(['flour-hundred lines/l2/amount']);
    expect(why(flour('l1', '80'), flour('l2', '20'))).toEqual([]);
  });
  test('is all in per cent or none of it', () => {
    expect(why(flour('l1', '100'), line('l2', { scales: 'flour' }))).toEqual(['flour-both lines/l2/unit']);
  });
  test('and what others are a per cent of is no range', () => {
    const water = line('l2', { unit: 'percent', item: { ingredient: 'water' } });
    const range = line('l1', { amountTo: '2', scales: 'flour' });
    expect(why(range, water)).toEqual(['flour-range lines/l1/amount']);
    expect(why(range)).toEqual([]);
  });
});

test('allowed: a range to taste, a share to taste, a weight once cooked, a component in per cent', () => {
  expect(
    why(
      line('l1', { amountTo: '2', scales: 'taste' }),
      line('l2', { unit: 'percent', scales: 'taste' }),
      line('l3', { stated: 'cooked', cooked: 'baked' }),
      line('l4', { unit: 'percent', item: { component: 'starter' } }),
    ),
  ).toEqual([]);
});

describe('an ingredient', () => {
  const about = (fields: object) =>
    refusals('ingredient', ingredient.parse({ key: 'lamb', name: 'Lamb', ...fields }), known).map(
      ({ code, subject }) => `${code} ${subject.field}`,
    );
  const cooked = (name: string, part: string) => ({ name, yield: part, from: 'bought' });

  test('has no cooked yield of 0, and none twice', () => {
    expect(about({ cookedYields: [cooked('roasted', '0')] })).toEqual(['cooked-yield-zero cookedYields']);
    expect(about({ cookedYields: [cooked('roasted', '0.5'), cooked('Roasted ', '0.6')] })).toEqual([
      'cooked-yield-twice cookedYields',
    ]);
    expect(about({ cookedYields: [cooked('boiled', '3.05')] })).toEqual([]);
  });
  test('is not weighed or packed by the per cent', () => {
    expect(about({ weights: [{ unit: 'percent', grams: '1' }] })).toEqual(['unit-share weights']);
    expect(about({ packs: [{ key: 'p', size: { amount: '5', unit: 'percent' } }] })).toEqual([
      'unit-share packs/p/size',
    ]);
  });
});
