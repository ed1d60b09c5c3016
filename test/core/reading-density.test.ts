import { expect, test } from 'vitest';
import { readDensity } from '../../src/core/reading-density.js';

const value = (text: string, cup: 'metric' | 'us' = 'metric') => {
  const read = readDensity(text, cup);
  return 'value' in read ? read.value : read.sentence;
};

test('a density is grams in a ml, or the weight of a measure', () => {
  expect(value('0.92')).toBe('0.92');
  expect(value('0.92 g')).toBe('0.92');
  expect(value('125 g a cup')).toBe('0.5');
  expect(value('125 g a cup', 'us')).toBe('0.5283');
  expect(value('4.6 g per tsp')).toBe('0.92');
  expect(value('460 g / 500 ml')).toBe('0.92');
  expect(value('4 oz a cup')).toBe('0.4536');
});

test('what can’t be a density says so', () => {
  expect(value('92')).toBe(
    'No food weighs 92.00 g a ml: water weighs 1. Enter what one ml weighs, such as 0.92, or 125 g a cup.',
  );
  for (const typed of ['', '0', 'light', '125 ml a cup', '125 g a bunch'])
    expect(value(typed)).toContain('Enter what one ml weighs in g');
});
