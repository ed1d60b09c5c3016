import { describe, expect, test } from 'vitest';
import { type Ingredient, ingredient } from '../../src/core/facts/ingredient.js';
import { figuresOf, foodOf, foods } from '../../src/core/foods.js';
import {
  departuresFrom,
  honestSource,
  lackingOf,
  referenceOf,
  takenFrom,
} from '../../src/core/own-figures.js';

const onion = foodOf('onion')!;
const named = (name: string, figures: object = {}): Ingredient =>
  ingredient.parse({ key: 'x', name, ...figures });
const asPublished = (id: string, name: string) => named(name, figuresOf(foodOf(id)!));

test('an ingredient is held against the food whose item number its sources name, else the one of its name', () => {
  expect(referenceOf(named('Onions'))?.id).toBe('onion');
  expect(referenceOf(named('Scallions'))?.id).toBe('spring-onion');
  expect(referenceOf(asPublished('onion', 'House alliums'))?.id).toBe('onion');
  expect(referenceOf(asPublished('almonds-ground', 'Ground almonds'))?.id).toBe('almonds-ground');
  expect(referenceOf(named('Stardust'))).toBeUndefined();
});

test('as published, no food departs from itself or lacks anything', () => {
  for (const food of foods) {
    const one = named(food.name, figuresOf(food));
    expect([departuresFrom(food, one), lackingOf(food, one)], food.id).toEqual([[], []]);
  }
});

describe('a figure of one’s own', () => {
  const own = {
    ...asPublished('onion', 'Onion'),
    edibleYield: { yield: '0.8', source: 'weighed' },
    cookedYields: [{ name: 'Boiled', yield: '0.9', from: 'prepared' as const, source: 'weighed' }],
  };

  test('is said with what is published for it', () => {
    expect(departuresFrom(onion, own)).toEqual([
      { at: 'edibleYield', published: '0.9', item: '11282' },
      { at: 'cookedYields/boiled', published: '0.855', item: '11283', from: 'prepared' },
    ]);
  });

  test('is taken back one by one', () => {
    const back = takenFrom(onion, own, 'edibleYield');
    expect(back.edibleYield).toEqual(figuresOf(onion).edibleYield);
    expect(departuresFrom(onion, back).map(({ at }) => at)).toEqual(['cookedYields/boiled']);
    expect(departuresFrom(onion, takenFrom(onion, back, 'cookedYields/boiled'))).toEqual([]);
    expect(takenFrom(onion, own, 'weights/barrel')).toEqual(own);
  });

  test('a yield of one’s own from the other weight departs as well', () => {
    const [published] = figuresOf(onion).cookedYields;
    const bought = { ...own, cookedYields: [{ ...published!, from: 'bought' as const }] };
    expect(departuresFrom(onion, bought).map(({ at }) => at)).toContain('cookedYields/boiled');
  });
});

test('what is lacking is named, and each of it can be taken', () => {
  const bare = named('Onion');
  expect(lackingOf(onion, bare)).toEqual([
    'edibleYield',
    'density',
    'weights/each',
    'weights/slice',
    'cookedYields/boiled',
  ]);
  const filled = lackingOf(onion, bare).reduce((one, at) => takenFrom(onion, one, at), bare);
  expect(filled).toMatchObject(figuresOf(onion));
});

test('a source lends no number that is not its own, and keeps the item number', () => {
  const source = 'USDA SR28 11282, less stem ends, sprouts and defects';
  expect(honestSource(source, '0.9', 'edibleYield')).toBe(source);
  expect(honestSource(source, '9/10', 'edibleYield')).toBe(source);
  const mine = honestSource(source, '0.8', 'edibleYield');
  expect(mine).toBe('own figure, instead of USDA SR28 11282');
  expect(referenceOf(named('Alliums', { edibleYield: { yield: '0.8', source: mine } }))?.id).toBe('onion');
  expect(honestSource('USDA SR28 99999, a row of another table', '0.8', 'edibleYield')).toMatch(/^USDA/);
  expect(honestSource('weighed 3 May', '0.8', 'edibleYield')).toBe('weighed 3 May');
  expect(honestSource('USDA SR28 11282, 1 slice', '20', 'weights/slice')).toMatch(/^own figure/);
});
