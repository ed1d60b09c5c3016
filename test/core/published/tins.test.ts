import { expect, test } from 'vitest';
import { type Tin, tin } from '../../../src/core/facts/recipe.js';
import { Rational } from '../../../src/core/quantity/rational.js';
import { batchesForTin, filled, floorOf } from '../../../src/core/tins.js';

const round = (diameter: string, more: object = {}): Tin => tin.parse({ shape: 'round', diameter, ...more });
const inches = { unit: 'in' };
const squareInch = Rational.parse('6.4516');
const squareInches = (one: Tin): Rational => floorOf(one).over(squareInch);

// Arithmetic on the area of a circle, π d² / 4, to two places: round tins of 8, 9 and 10 inches.
test('round tins of 8, 9 and 10 in have 50.27, 63.62 and 78.54 square inches', () => {
  const areas = ['8', '9', '10'].map((across) => squareInches(round(across, inches)).toFixed(2));
  expect(areas).toEqual(['50.27', '63.62', '78.54']);
});

// Tins of equal depth scale by area: 9² / 8² = 81 / 64, and 25² / 20² = 25 / 16; π is in neither.
test('8 × 8 in to 9 × 9 in is × 1.2656, and 20 cm round to 25 cm round × 1.5625, both exactly', () => {
  const [eight, nine] = ['8', '9'].map((side) => tin.parse({ shape: 'square', side, unit: 'in' }));
  expect(batchesForTin(eight!, nine!).toString()).toBe('1.265625');
  expect(batchesForTin(round('20'), round('25')).toString()).toBe('1.5625');
});

// 9 × 13 / (2 × π × 8² / 4) = 117 / 100.53.
test('two 8 in round tins to one of 9 × 13 in is × 1.164', () => {
  const oblong = tin.parse({ shape: 'rectangular', length: '9', width: '13', unit: 'in' });
  expect(batchesForTin(round('8', { ...inches, count: 2 }), oblong).toFixed(3)).toBe('1.164');
});

// 3 / 1.5625 = 1.92.
test('three times a recipe in a 25 cm tin instead of a 20 cm one stands 1.92 times as deep', () => {
  expect(filled(round('20'), Rational.of(3), round('25')).deeper.toString()).toBe('1.92');
});

// NIST Handbook 44, appendix C: the inch is 2.54 cm exactly.
test('inches are centimetres exactly: a 10 in tin is a 25.4 cm tin', () => {
  expect(batchesForTin(round('10', inches), round('25.4')).toString()).toBe('1');
});

// π to thirty-five places: 3.14159265358979323846264338327950288 (any table of constants; from memory).
test('π is good to one part in 10¹⁶', () => {
  const known = Rational.parse('3.14159265358979323846264338327950288');
  const ours = floorOf(round('2'));
  const off = ours.minus(known).over(known);
  expect((off.sign < 0 ? off.negated() : off).compare(Rational.of(1n, 10n ** 16n))).toBe(-1);
});

test('a ring is a round tin less its hole; a loaf tin is its sides', () => {
  const ring = tin.parse({ shape: 'ring', diameter: '26', hole: '10' });
  expect(batchesForTin(round('24'), ring).toString()).toBe('1');
  const loaf = tin.parse({ shape: 'loaf', length: '23', width: '13' });
  expect(floorOf(loaf).toString()).toBe('299');
});
