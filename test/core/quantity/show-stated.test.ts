import { expect, test } from 'vitest';
import { kitchen } from '../../../src/core/facts/kitchen.js';
import { Rational } from '../../../src/core/quantity/rational.js';
import { inWords, type Rounding, showAmount, showQuantity } from '../../../src/core/quantity/show.js';

const metric = kitchen.parse({ name: 'Invented', currency: 'GBP', timeZone: 'Europe/London' });
const american = kitchen.parse({ ...metric, units: 'us', cup: 'us', heat: 'F' });
const r = Rational.parse;
const line = (amount: string, unit: string, rounding: Rounding = 'stated', ways = metric) =>
  inWords(showAmount(r(amount), unit, ways.cup, ways, rounding));

// The cook wrote 125 g; to the nearest ten that would be 130 g, 4 per cent more butter.
test('what a recipe states is shown as it stands, and rounded once it is scaled or converted', () => {
  expect(line('125', 'g')).toBe('125 g');
  expect(line('125', 'g', 'recipe')).toBe('130 g');
  expect([line('62.5', 'g'), line('1.125', 'kg'), line('1.5', 'kg'), line('375', 'ml')]).toEqual([
    '62.5 g',
    '1.125 kg',
    '1.50 kg',
    '375 ml',
  ]);
  // 4 oz are 113.398 g; a third of a kilo has no end.
  expect([line('4', 'oz'), line('1/3', 'kg'), line('0', 'g')]).toEqual(['110 g', '330 g', '0 g']);
  expect(line('12', 'g', 'stated', { ...metric, scaleStep: '5' })).toBe('10 g');
  expect(line('125', 'g', 'stated', { ...metric, scaleStep: '5' })).toBe('125 g');
});

// 10 g are 0.353 oz and 4 g are 0.141 oz: as a quarter, 7.1 g, a third less and three quarters more.
test('so little that a quarter of an ounce slips is said in grams, where the scales show grams', () => {
  const us = (grams: string, ways = american) => inWords(showQuantity({ value: r(grams), base: 'g' }, ways));
  expect(['10', '4', '3', '0.5'].map((grams) => us(grams))).toEqual(['10 g', '4 g', '3 g', '0.5 g']);
  expect(['7', '14.2', '28', '100'].map((grams) => us(grams))).toEqual([
    '1/4 oz',
    '1/2 oz',
    '1 oz',
    '3 1/2 oz',
  ]);
  expect(us('10', { ...american, scaleStep: '5' })).toBe('1/4 oz');
  expect(us('0.1')).toBe('under 1/4 oz');
});
