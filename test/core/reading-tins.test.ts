import { expect, test } from 'vitest';
import { readTin } from '../../src/core/reading-tins.js';
import { sidesInWords } from '../../src/core/tins.js';

const read = (shape: string, sides: string, more: object = {}, units: 'metric' | 'us' = 'metric') => {
  const wrong: string[] = [];
  const typed = { shape, sides, count: '', depth: '', ...more };
  const tin = readTin(typed, { units }, (field, sentence) => wrong.push(`${field}: ${sentence}`));
  return tin ?? wrong;
};

test('sides as cooks write them, in the kitchen’s units where none is named', () => {
  expect(read('round', '23')).toMatchObject({ shape: 'round', diameter: '23', unit: 'cm', count: 1 });
  expect(read('round', '9', {}, 'us')).toMatchObject({ diameter: '9', unit: 'in' });
  expect(read('square', '20 x 20 cm')).toMatchObject({ shape: 'square', side: '20' });
  expect(read('rectangular', '9x13"')).toMatchObject({ length: '9', width: '13', unit: 'in' });
  expect(read('rectangular', '230 × 330 mm')).toMatchObject({ length: '23', width: '33', unit: 'cm' });
  expect(read('ring', '24 by 8 cm')).toMatchObject({ diameter: '24', hole: '8' });
  expect(read('loaf', '8½ x 4½ in')).toMatchObject({ length: '8.5', width: '4.5', unit: 'in' });
});

test('a bare figure is in the unit of the tin that is there, and sides are not told in two units', () => {
  const like = readTin(
    { shape: 'round', sides: '8 in', count: '', depth: '' },
    { units: 'metric' },
    () => {},
  );
  const typed = { shape: 'rectangular', sides: '9 x 13', count: '', depth: '2' };
  expect(readTin(typed, { units: 'metric' }, () => {}, like)).toMatchObject({
    length: '9',
    unit: 'in',
    depth: '2',
  });
  expect(readTin({ ...typed, sides: '23 x 33 cm' }, { units: 'metric' }, () => {}, like)).toMatchObject({
    unit: 'cm',
  });
  expect(read('rectangular', '8 in x 30 cm')).toEqual([
    'sides: Enter the inside of the tin, such as 20 x 30 cm. You entered 8 in x 30 cm.',
  ]);
  expect(read('rectangular', '20cm x 30cm')).toMatchObject({ length: '20', width: '30', unit: 'cm' });
});

test('how many and how deep, in the unit of the sides', () => {
  expect(read('round', '20 cm', { count: '2', depth: '7' })).toMatchObject({ count: 2, depth: '7' });
  expect(read('round', '20 cm', { depth: '2 in' })).toMatchObject({ depth: '5.08' });
  expect(read('round', '8 in', { depth: '5.08 cm' })).toMatchObject({ depth: '2' });
});

test('what can’t be a tin says what to type', () => {
  expect(read('rectangular', '20')).toEqual([
    'sides: Enter the inside of the tin, such as 20 x 30 cm. You entered 20.',
  ]);
  expect(read('round', '20 x 30')[0 as never]).toContain('such as 23 cm');
  expect(read('ring', '8 x 24')).toEqual([
    'sides: The hole of a ring is smaller than the ring. Enter 24 x 8 cm, across and across the hole.',
  ]);
  expect(read('round', '0')[0 as never]).toContain('above zero');
  expect(read('round', 'big')[0 as never]).toContain('such as 23 cm');
  expect(read('round', '20', { count: 'x', depth: 'y' })).toHaveLength(2);
  expect(read('round', ' '.repeat(1_000_000) + 'x'.repeat(1_000_000))[0 as never]).toContain('such as 23 cm');
});

test('what is read is written so that it reads back', () => {
  for (const [shape, sides] of [
    ['round', '22.5 cm'],
    ['rectangular', '9 × 13 in'],
    ['ring', '9 1/2 × 3 in'],
    ['loaf', '23 × 13 cm'],
  ] as const) {
    const tin = read(shape, sides);
    if (Array.isArray(tin)) throw new Error(tin.join());
    expect(sidesInWords(tin)).toBe(sides);
    expect(read(shape, sidesInWords(tin))).toEqual(tin);
  }
});
