import { describe, expect, test } from 'vitest';
import { kitchen } from '../../../src/core/facts/kitchen.js';
import { Rational } from '../../../src/core/quantity/rational.js';
import {
  inWords,
  orByWeight,
  plural,
  showAmount,
  showHeat,
  showQuantity,
} from '../../../src/core/quantity/show.js';
import { inUnit, quantity } from '../../../src/core/quantity/units.js';

const metric = kitchen.parse({ name: 'Invented', currency: 'GBP', timeZone: 'Europe/London' });
const american = kitchen.parse({ ...metric, units: 'us', cup: 'us', heat: 'F' });
const r = Rational.parse;
const grams = (text: string, ways = metric, rounding: 'recipe' | 'prep' = 'recipe') =>
  inWords(showQuantity({ value: r(text), base: 'g' }, ways, rounding));
const line = (text: string, unit: string, ways = metric) =>
  inWords(showAmount(r(text), unit, ways.cup, ways));

// The house's own rule: from 100 g to tens, 10 to 99 to ones, below to halves; kilos to two places, for prep to one.
test('grams and kilos', () => {
  expect(['994', '147', '99.4', '12.6', '3.2', '0.3', '0.2', '0'].map((g) => grams(g))).toEqual([
    '990 g',
    '150 g',
    '99 g',
    '13 g',
    '3 g',
    '0.5 g',
    'under 0.5 g',
    '0 g',
  ]);
  expect([grams('2154'), grams('2154', metric, 'prep'), grams('995')]).toEqual([
    '2.15 kg',
    '2.2 kg',
    '1.00 kg',
  ]);
});

test('millilitres, and litres with a capital L', () => {
  const ml = (text: string) => inWords(showQuantity({ value: r(text), base: 'ml' }, metric));
  expect([ml('250'), ml('1500')]).toEqual(['250 ml', '1.50 L']);
});

// US Armed Forces Recipe Service, TM 10-412 (2003), card A-1(2), read in a copy: ounces as decimal parts of a pound.
test('ounces as decimal pounds', () => {
  const published = '.06 .13 .19 .25 .31 .38 .44 .50 .56 .63 .69 .75 .81 .88 .94 1.00'.split(' ');
  const decimals = published.map((_, i) =>
    inUnit(quantity(r(String(i + 1)), 'oz', 'us').value, 'lb', 'us').toFixed(2),
  );
  expect(decimals.map((text) => text.replace(/^0/, ''))).toEqual(published);
});

// TM 10-412 (2003), card A-1, read in a copy: 1.25 lb for 100 portions are 4.35 lb for 348, which is 4 lb 5 1/2 oz.
test('pounds are said with their ounces, and for prep as a decimal', () => {
  const pounds = quantity(r('1.25').times(r('3.48')), 'lb', 'us').value.toString();
  expect([grams(pounds, american), grams(pounds, american, 'prep')]).toEqual(['4 lb, 5 1/2 oz', '4.4 lb']);
  expect([grams(inWeight(16), american), grams(inWeight('15.9'), american)]).toEqual(['1 lb', '1 lb']);
});

// The house's own rule: a kitchen whose scales show 5 g is never told 13 g, whatever the rule for the size says.
test('no weight is shown finer than the scales', () => {
  const by = (scaleStep: string, units: 'metric' | 'us' = 'metric') => ({ ...metric, units, scaleStep });
  expect(['12.6', '2', '147', '2154'].map((g) => grams(g, by('5')))).toEqual([
    '15 g',
    'under 5 g',
    '150 g',
    '2.15 kg',
  ]);
  expect(['0.24', '12.6'].map((g) => grams(g, by('0.1')))).toEqual(['0.2 g', '13 g']);
  expect([grams('2130', by('25')), grams('2130', by('200'), 'prep')]).toEqual(['2.125 kg', '2.2 kg']);
  expect([grams('150', by('10', 'us')), grams('3', by('10', 'us')), grams('150', by('50', 'us'))]).toEqual([
    '5 1/2 oz',
    'under 1/2 oz',
    '6 oz',
  ]);
});

// TM 10-412 (2003), card A-1, read in a copy: .00 to .12 is none, to .37 a quarter, to .62 a half, to .87 three, then one.
test('hundredths of an ounce are shown to the nearest quarter', () => {
  const quarter = (n: number) => (n <= 12 ? 0 : n <= 37 ? 1 : n <= 62 ? 2 : n <= 87 ? 3 : 4);
  const names = ['5 oz', '5 1/4 oz', '5 1/2 oz', '5 3/4 oz', '6 oz'];
  for (let n = 0; n < 100; n++)
    expect(grams(inWeight(`5.${String(n).padStart(2, '0')}`), american)).toBe(names[quarter(n)]);
});

const inWeight = (ounces: number | string) => quantity(r(String(ounces)), 'oz', 'us').value.toString();

// TM 10-412 (2003), card A-1(3), read in a copy: 6 gallons per 100 portions for 333 portions are 19 gal, 3 qt, 1 pt,
// 1 cup, 10 tbsp and 2 3/4 tsp (2.64 to the nearest quarter).
test('19.98 gallons measured out from the largest measure down', () => {
  const { value } = quantity(r('6').times(r('3.33')), 'gallon', 'us');
  const shown = (rounding: 'recipe' | 'prep') =>
    inWords(showQuantity({ value, base: 'ml' }, american, rounding));
  expect(shown('recipe')).toBe('19 gallons, 3 quarts, 1 pint, 1 cup, 10 tbsp, 2 3/4 tsp');
  expect(shown('prep')).toBe('20 gallons');
});

describe('spoons and cups stay spoons and cups while they are few', () => {
  test.each([
    ['0.5', 'tsp', '1/2 tsp'],
    ['1/3', 'tsp', '1/3 tsp'],
    ['6', 'tsp', '2 tbsp'],
    ['2.5', 'tbsp', '2 1/2 tbsp'],
    ['20', 'tbsp', '300 ml'],
    ['1.5', 'cup', '1 1/2 cups'],
    ['6', 'cup', '1.50 L'],
    ['0.01', 'tsp', 'under 1/8 tsp'],
  ])('%s %s is %s', (amount, unit, shown) => {
    expect(line(amount, unit)).toBe(shown);
  });
});

test('counts are said as cooks say them', () => {
  const count = (text: string, unit: string) => inWords(showQuantity({ value: r(text), base: unit }, metric));
  expect([count('1', 'clove'), count('2.5', 'bunch'), count('3', 'leaf'), count('0.5', 'tin')]).toEqual([
    '1 clove',
    '2 1/2 bunches',
    '3 leaves',
    '1/2 tin',
  ]);
  expect(plural('constructor', '2')).toBe('constructors');
});

// 0.05 of a bunch that weighs 32 g prepared is 1.6 g, to the nearest half 1.5; in quarters of an ounce it is none.
test('less than an eighth of a bunch is said by its weight, where that is known and can be shown', () => {
  const said = (weight: string | undefined, ways = metric, unit = 'bunch', amount = '0.05') =>
    inWords(orByWeight(showAmount(r(amount), unit, ways.cup, ways), weight ? r(weight) : undefined, ways));
  expect([said('1.6'), said(undefined), said('1.6', american)]).toEqual([
    '1.5 g',
    'under 1/8 bunch',
    '1.5 g',
  ]);
  expect([said('16', metric, 'bunch', '0.5'), said('0.1', metric, 'tsp', '0.01')]).toEqual([
    '1/2 bunch',
    'under 1/8 tsp',
  ]);
});

// °C = (°F − 32) × 5/9, the definition of the scales: 350 °F are 176.67 °C, kept as 177 and shown as 350 again.
test('degrees as the kitchen reads them', () => {
  expect(r('350').minus(r('32')).times(r('5/9')).toFixed(2)).toBe('176.67');
  expect([showHeat(177, american), showHeat(180, american), showHeat(180, metric)]).toEqual([
    '350 °F',
    '355 °F',
    '180 °C',
  ]);
});
