import { convert } from 'convert';
import unitmath from 'unitmath';
import { describe, expect, test } from 'vitest';
import { cups } from '../../../src/core/facts/kitchen.js';
import { Rational } from '../../../src/core/quantity/rational.js';
import {
  baseOf,
  countUnits,
  inUnit,
  isMeasured,
  measuredUnits,
  needsCup,
  quantity,
  readUnit,
} from '../../../src/core/quantity/units.js';

const one = (unit: string, cup: (typeof cups)[number] = 'metric') => {
  const { value, base } = quantity(Rational.one, unit, cup);
  return `${value} ${base}`;
};

describe('published sizes', () => {
  // National Institute of Standards and Technology, Special Publication 811 (2008), appendix B, and Handbook 44,
  // appendix C: the table cell from memory, the value the same in four unit libraries.
  test('the avoirdupois pound and ounce', () => {
    expect([one('lb'), one('oz')]).toEqual(['453.59237 g', '28.349523125 g']);
  });

  // National Institute of Standards and Technology, Handbook 44, appendix C, units of capacity, liquid measure.
  test('US gallon, quart, pint, cup, fluid ounce and spoons', () => {
    expect(['gallon', 'quart', 'pint', 'cup', 'fl-oz', 'tbsp', 'tsp'].map((unit) => one(unit, 'us'))).toEqual(
      [
        '3785.411784 ml',
        '946.352946 ml',
        '473.176473 ml',
        '236.5882365 ml',
        '29.5735295625 ml',
        '14.78676478125 ml',
        '4.92892159375 ml',
      ],
    );
  });

  // United Kingdom, Weights and Measures Act 1985, schedule 1: from memory. The cup is half a pint.
  test('imperial gallon, pint, fluid ounce and cup', () => {
    const said = ['gallon', 'pint', 'fl-oz', 'cup'].map((unit) => one(unit, 'imperial'));
    expect(said).toEqual(['4546.09 ml', '568.26125 ml', '28.4130625 ml', '284.130625 ml']);
    expect(one('pint', 'metric')).toBe('568.26125 ml');
  });

  // NSW Health, cookery conversion chart: the Australian tablespoon holds 20 ml (AS 1325-1972: from memory).
  test('metric and Australian cup and spoons', () => {
    expect(['cup', 'tbsp', 'tsp'].map((unit) => one(unit))).toEqual(['250 ml', '15 ml', '5 ml']);
    expect(['cup', 'tbsp', 'tsp'].map((unit) => one(unit, 'australian'))).toEqual([
      '250 ml',
      '20 ml',
      '5 ml',
    ]);
  });

  // United States, 21 CFR 101.9(b)(5)(viii): from memory.
  test('cup, fluid ounce and spoons of US labels', () => {
    const said = ['cup', 'fl-oz', 'tbsp', 'tsp'].map((unit) => one(unit, 'us-label'));
    expect(said).toEqual(['240 ml', '30 ml', '15 ml', '5 ml']);
  });

  test('the four cups are four sizes', () => {
    const sizes = (['metric', 'us', 'us-label', 'imperial'] as const).map((cup) => one('cup', cup));
    expect(new Set(sizes).size).toBe(4);
  });
});

// The npm libraries `convert` 8 and `unitmath` 0.8, which know the same measures by other tables and work in floating
// point; unitmath has no imperial ones, and neither has a 20 ml tablespoon.
type Named = [unit: Unit, cup: (typeof cups)[number], convert: string, unitmath?: string];
type Unit = (typeof measuredUnits)[number];
const everywhere: Named[] = [
  ['g', 'metric', 'gram', 'g'],
  ['kg', 'metric', 'kilogram', 'kg'],
  ['oz', 'metric', 'ounce', 'oz'],
  ['lb', 'metric', 'pound', 'lb'],
];
const volumes: Named[] = [
  ['ml', 'us', 'milliliter', 'mL'],
  ['cl', 'us', 'centiliter', 'cL'],
  ['dl', 'us', 'deciliter', 'dL'],
  ['l', 'us', 'liter', 'L'],
  ['tsp', 'us', 'teaspoon', 'teaspoon'],
  ['tbsp', 'us', 'tablespoon', 'tablespoon'],
  ['fl-oz', 'us', 'US fluid ounce', 'floz'],
  ['cup', 'us', 'cup', 'cup'],
  ['pint', 'us', 'pint', 'pint'],
  ['quart', 'us', 'quart', 'quart'],
  ['gallon', 'us', 'gallon', 'gallon'],
  ['cup', 'us-label', 'US legal cup'],
  ['fl-oz', 'imperial', 'imperial fluid ounce'],
  ['pint', 'imperial', 'imperial pint'],
  ['quart', 'imperial', 'imperial quart'],
  ['gallon', 'imperial', 'imperial gallon'],
];
const pairs = [everywhere, volumes].flatMap((list) => list.flatMap((a) => list.map((b) => [a, b] as const)));

const ours = ([unit, cup]: Named, [other, otherCup]: Named): number =>
  inUnit(quantity(Rational.parse('7.25'), unit, cup).value, other, otherCup).toNumber();

test('every pair of measures is to each other what two other libraries say', () => {
  const met = { convert: 0, unitmath: 0 };
  for (const [a, b] of pairs) {
    const said = convert(7.25, a[2] as 'cup').to(b[2] as 'cup');
    expect(ours(a, b) / said, `${a[2]} in ${b[2]}`).toBeCloseTo(1, 12);
    met.convert++;
    if (!a[3] || !b[3]) continue;
    expect(ours(a, b) / unitmath(`7.25 ${a[3]}`).to(b[3]).value, `${a[3]} in ${b[3]}`).toBeCloseTo(1, 12);
    met.unitmath++;
  }
  expect(met).toEqual({ convert: 16 + 256, unitmath: 16 + 121 });
});

test('every unit leads to its base and back, exactly', () => {
  const amount = Rational.of(7, 3);
  for (const cup of cups)
    for (const unit of [...measuredUnits, ...countUnits]) {
      const { value, base } = quantity(amount, unit, cup);
      expect(inUnit(value, unit, cup).equals(amount), `${unit} ${cup}`).toBe(true);
      expect(base).toBe(baseOf(unit));
      expect(isMeasured(unit)).toBe(base === 'g' || base === 'ml');
    }
});

test('a dozen is twelve each; a count stays a count', () => {
  expect([one('dozen'), one('clove'), one('spear')]).toEqual(['12 each', '1 clove', '1 spear']);
});

// A unit may be called anything; a name that every object bears is no size.
test('a unit called like a property of every object is a count', () => {
  for (const unit of ['constructor', 'valueof', 'tostring']) expect(one(unit)).toBe(`1 ${unit}`);
  expect(readUnit('constructor')).toBe('constructor');
});

test('only cups, spoons and the old measures hang on the cup system', () => {
  for (const unit of measuredUnits) {
    const sizes = new Set(cups.map((cup) => one(unit, cup)));
    expect(sizes.size > 1, unit).toBe(needsCup(unit));
  }
});

test('words of cooks lead to units', () => {
  const read = (text: string) => readUnit(text);
  expect(['Grams', 'kilo', 'LB', 'lbs.', 'L', 'Tablespoons', 'tsp', ''].map(read)).toEqual([
    'g',
    'kg',
    'lb',
    'lb',
    'l',
    'tbsp',
    'tsp',
    'each',
  ]);
  expect(['fl oz', 'cloves', 'tins', 'leaves', 'bunches', 'knob', 'two cups!'].map(read)).toEqual([
    'fl-oz',
    'clove',
    'tin',
    'leaf',
    'bunch',
    'knob',
    undefined,
  ]);
});
