import { expect, test } from 'vitest';
import { nearNames } from '../../src/core/near-names.js';

const names = ['Onion', 'Spring onion', 'Carrot', 'Crème fraîche', 'Potato, floury', 'Leek', 'Plain flour'];

test('a slip of the finger finds the name that was meant', () => {
  expect(nearNames('Onoin', names)).toEqual(['Onion']);
  expect(nearNames('carrrot', names)).toEqual(['Carrot']);
  expect(nearNames('lekk', names)).toEqual(['Leek']);
});

test('plurals, accents and a part of the name find it too, the nearest first', () => {
  expect(nearNames('onions', names)).toEqual(['Onion', 'Spring onion']);
  expect(nearNames('potatoes', names)).toEqual(['Potato, floury']);
  expect(nearNames('creme fraiche', names)).toEqual(['Crème fraîche']);
  expect(nearNames('flour', names)).toEqual(['Plain flour']);
});

test('another food is not guessed at', () => {
  expect(nearNames('Saffron', names)).toEqual([]);
  expect(nearNames('tin', names)).toEqual([]);
  expect(nearNames('', names)).toEqual([]);
});
