import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Recipe } from '../../src/core/facts/recipe.js';
import { merge } from '../../src/core/merge.js';
import { anyEvent, anyRecipe } from '../arbitraries/index.js';

const rows = (...keys: string[]) => keys.map((key) => ({ key, amount: '1', unit: 'kg' }));
const keysOf = (list: { key: string }[]) => list.map(({ key }) => key);
const amounts = (...pairs: [string, string][]) => pairs.map(([key, amount]) => ({ key, amount, unit: 'kg' }));

describe('one field', () => {
  // base, yours, theirs, what stands
  test.each([
    ['nobody', 'a', 'a', 'a', 'a'],
    ['you alone', 'a', 'b', 'a', 'b'],
    ['they alone', 'a', 'a', 'c', 'c'],
    ['both alike', 'a', 'b', 'b', 'b'],
  ])('changed by %s', (_, base, yours, theirs, stands) => {
    expect(merge({ note: base }, { note: yours }, { note: theirs })).toMatchObject({
      doc: { note: stands },
      clashes: [],
    });
  });

  test('changed by both to different values clashes, and nothing is chosen', () => {
    const merged = merge({ note: 'a', name: 'x' }, { note: 'b', name: 'x' }, { note: 'c', name: 'y' });
    expect(merged.clashes).toEqual([{ path: 'note', base: 'a', yours: 'b', theirs: 'c' }]);
    expect(merged.theirs).toEqual(['name']);
  });

  test.each(['yours', 'theirs'] as const)('a clash is settled by choosing %s', (choice) => {
    const merged = merge({ note: 'a' }, { note: 'yours' }, { note: 'theirs' }, { note: choice });
    expect(merged).toMatchObject({ doc: { note: choice }, clashes: [] });
  });

  test('an amount and its unit are one thing', () => {
    const size = (amount: string, unit: string) => ({
      packs: [{ key: 'p', size: { amount, unit }, brand: '' }],
    });
    const merged = merge(size('1', 'kg'), size('2', 'kg'), size('1', 'lb'));
    expect(merged.clashes.map(({ path }) => path)).toEqual(['packs/p/size']);
  });
});

describe('lists of rows with keys', () => {
  const both = (base: object[], yours: object[], theirs: object[]) =>
    merge({ lines: base }, { lines: yours }, { lines: theirs }) as unknown as {
      doc: { lines: { key: string }[] };
      clashes: { path: string; yours: unknown; theirs: unknown }[];
    };

  test.each([
    [
      'different lines changed',
      amounts(['a', '1'], ['b', '1']),
      amounts(['a', '2'], ['b', '1']),
      amounts(['a', '1'], ['b', '3']),
      amounts(['a', '2'], ['b', '3']),
    ],
    ['a line added by each', rows('a'), rows('a', 'mine'), rows('a', 'theirs'), rows('a', 'mine', 'theirs')],
    ['a line taken out by one', rows('a', 'b'), rows('b'), rows('a', 'b'), rows('b')],
    ['the same line taken out by both', rows('a', 'b'), rows('a'), rows('a'), rows('a')],
    [
      'lines moved by one, added by the other',
      rows('a', 'b', 'c'),
      rows('c', 'a', 'b'),
      rows('a', 'new', 'b', 'c'),
      rows('c', 'a', 'new', 'b'),
    ],
    ['a line put first', rows('a'), rows('new', 'a'), rows('a', 'z'), rows('new', 'a', 'z')],
  ])('%s', (_, base, yours, theirs, stands) => {
    const merged = both(base, yours, theirs);
    expect(merged.clashes).toEqual([]);
    expect(merged.doc.lines).toEqual(stands);
  });

  test('one line changed by both in different fields is asked about: half a line is no line', () => {
    const line = (amount: string, unit: string) => [{ key: 'a', amount, unit }];
    const merged = both(line('1', 'kg'), line('2', 'kg'), line('1', 'lb'));
    expect(merged.clashes).toMatchObject([
      { path: 'lines/a', yours: { amount: '2' }, theirs: { unit: 'lb' } },
    ]);
  });

  test('a line taken out by one and changed by the other is asked about', () => {
    const merged = both(rows('a', 'b'), rows('b'), amounts(['a', '7'], ['b', '1']));
    expect(merged.clashes).toMatchObject([{ path: 'lines/a', yours: undefined, theirs: { amount: '7' } }]);
    expect(keysOf(merged.doc.lines)).toContain('a');
  });

  test('lines moved by both in different ways are asked about', () => {
    const merged = both(rows('a', 'b', 'c'), rows('c', 'a', 'b'), rows('b', 'a', 'c'));
    expect(merged.clashes).toMatchObject([
      { path: 'lines#order', yours: ['c', 'a', 'b'], theirs: ['b', 'a', 'c'] },
    ]);
  });

  test('dishes merge inside their course, courses field by field', () => {
    const course = (time: string, ...dishes: string[]) => ({
      courses: [{ key: 'main', time, dishes: rows(...dishes) }],
    });
    const merged = merge(course('18:00', 'tart'), course('18:30', 'tart'), course('18:00', 'tart', 'pie'));
    expect(merged).toMatchObject({ doc: course('18:30', 'tart', 'pie'), clashes: [] });
  });

  test('allergens are changed one by one', () => {
    const state = (milk: string, egg: string) => ({ allergens: { milk, egg } });
    const merged = merge(state('may', 'may'), state('free', 'may'), state('may', 'contains'));
    expect(merged).toMatchObject({ doc: state('free', 'contains'), clashes: [] });
  });
});

describe('for any documents', () => {
  const there = { ingredients: ['leek'], recipes: ['tart'], places: ['home'] };
  const three = <T>(arb: fc.Arbitrary<T>) => fc.tuple(arb, arb, arb);
  const any = fc.oneof(three(anyRecipe('x', there)), three(anyEvent('x', there))) as fc.Arbitrary<
    [Recipe, Recipe, Recipe]
  >;

  test('what one side alone changed is taken whole', () => {
    fc.assert(
      fc.property(any, ([base, changed]) => {
        expect(merge(base, changed, base)).toMatchObject({ doc: changed, clashes: [] });
        expect(merge(base, base, changed)).toMatchObject({ doc: changed, clashes: [] });
        expect(merge(base, changed, changed)).toMatchObject({ doc: changed, clashes: [] });
      }),
    );
  });

  test('either choice for every clash settles all of them', () => {
    fc.assert(
      fc.property(
        any,
        fc.constantFrom('yours' as const, 'theirs' as const),
        ([base, yours, theirs], choice) => {
          const { clashes } = merge(base, yours, theirs);
          const choices = Object.fromEntries(clashes.map(({ path }) => [path, choice]));
          expect(merge(base, yours, theirs, choices).clashes).toEqual([]);
        },
      ),
    );
  });
});
