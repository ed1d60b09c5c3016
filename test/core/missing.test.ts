import { expect, test } from 'vitest';
import { ingredient } from '../../src/core/facts/ingredient.js';
import { missingOf } from '../../src/core/missing.js';
import { exampleKitchen } from '../world.js';

const { kitchen, ingredients } = exampleKitchen();
const codes = (one: Parameters<typeof missingOf>[0]) => missingOf(one, { kitchen }).map(({ code }) => code);

test('a bare ingredient lacks its label, its price and its yield', () => {
  const bare = ingredient.parse({ key: 'sumac', name: 'Sumac' });
  expect(codes(bare)).toEqual(['label-not-read', 'no-price', 'no-yield']);
  expect(missingOf(bare, { kitchen })[0]!.sentence).toBe('Sumac: no allergen known. Read its label.');
});

test('what is not bought lacks only its label', () => {
  expect(codes(ingredient.parse({ key: 'rain', name: 'Rain', notBought: true }))).toEqual(['label-not-read']);
});

test('the example kitchen lacks what its gaps say and nothing else', () => {
  const gaps = ingredients.flatMap((one) => codes(one).map((code) => `${one.key} ${code}`));
  expect(gaps).toEqual(['horseradish-sauce label-not-read']);
});
