import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readRecipes } from '../../../../src/core/exchange/recipe/read-recipes.js';
import { toSchemaOrg } from '../../../../src/core/exchange/recipe/to-schema-org.js';
import { byKey } from '../../../../src/core/facts/facts.js';
import { ingredient } from '../../../../src/core/facts/ingredient.js';
import { kitchen } from '../../../../src/core/facts/kitchen.js';
import { recipe } from '../../../../src/core/facts/recipe.js';
import { Rational } from '../../../../src/core/quantity/rational.js';
import { anyRecipe } from '../../../arbitraries/recipe.js';

const facts = {
  kitchen: kitchen.parse({ name: 'The test kitchen', currency: 'GBP', timeZone: 'Europe/London' }),
  places: new Map(),
  ingredients: byKey(
    [
      { key: 'leek', name: 'Leek' },
      { key: 'egg', name: 'Egg' },
      { key: 'salt', name: 'Salt' },
    ].map((one) => ingredient.parse(one)),
  ),
  recipes: byKey([
    recipe.parse({
      key: 'pastry',
      name: 'Shortcrust pastry',
      yield: { weight: { amount: '400', unit: 'g' } },
    }),
  ]),
};

const tart = recipe.parse({
  key: 'leek-tart',
  name: 'Leek tart',
  yield: { portions: '6', weight: { amount: '1.2', unit: 'kg' } },
  lines: [
    {
      key: 'a',
      amount: '500',
      unit: 'g',
      item: { ingredient: 'leek' },
      preparation: 'sliced',
      stated: 'prepared',
    },
    { key: 'b', amount: '3', item: { ingredient: 'egg' } },
    { key: 'c', amount: '1', unit: 'batch', item: { component: 'pastry' } },
    { key: 'd', amount: null, item: { ingredient: 'salt' }, scales: 'taste' },
  ],
  steps: [
    { key: 'a', words: 'Sweat the leeks.', minutes: 15 },
    { key: 'b', words: 'Line the tin.', minutes: 10, after: [] },
    { key: 'c', words: 'Bake.', minutes: 35, after: [{ step: 'a', least: 5 }, { step: 'b' }] },
  ],
});

/** Sweating 15, lining 10 after it, baking 35 after both: 25 + 35 = 60 minutes. */
test('a recipe goes out as schema.org words it', () => {
  expect(toSchemaOrg(tart, facts)).toEqual({
    '@context': 'https://schema.org',
    '@type': 'Recipe',
    name: 'Leek tart',
    recipeYield: ['6 portions', '1.2 kg'],
    recipeIngredient: [
      '500 g Leek, sliced, prepared weight',
      '3 Egg',
      '1 batch Shortcrust pastry',
      'Salt, to taste',
    ],
    recipeInstructions: [
      { '@type': 'HowToStep', position: 1, text: 'Sweat the leeks.', timeRequired: 'PT15M' },
      { '@type': 'HowToStep', position: 2, text: 'Line the tin.', timeRequired: 'PT10M' },
      { '@type': 'HowToStep', position: 3, text: 'Bake.', timeRequired: 'PT35M' },
    ],
    totalTime: 'PT1H',
  });
});

test('a range goes out with both its ends', () => {
  const lines = tart.lines.map((line) => ({ ...line, amount: '2', amountTo: '3' }));
  const [first] = toSchemaOrg({ ...tart, lines }, facts).recipeIngredient;
  expect(first).toBe('2–3 g Leek, sliced, prepared weight');
});

test('cups and spoons say whose they are, and stand in the plural', () => {
  const [line] = tart.lines;
  const one = { ...tart, note: 'Rest it.', lines: [{ ...line!, amount: '2', unit: 'cup' }] };
  expect(toSchemaOrg(one, facts)).toMatchObject({
    recipeIngredient: ['2 cups Leek, sliced, prepared weight'],
    description: 'Rest it.\nMetric: cup 250 ml, tablespoon 15 ml.',
  });
  expect(toSchemaOrg({ ...one, cup: 'us' }, facts).description).toContain('US: cup 237 ml');
});

test('a total time is left out while a step has no minutes', () => {
  const open = { ...tart, steps: tart.steps.map((one, at) => (at === 1 ? { ...one, minutes: null } : one)) };
  expect(toSchemaOrg(open, facts)).not.toHaveProperty('totalTime');
});

/** Properties that schema.org (version 29) gives Recipe and HowToStep or what they descend from, with their types. */
const recipeProperties: Record<string, (value: unknown) => boolean> = {
  '@context': (value) => value === 'https://schema.org',
  '@type': (value) => value === 'Recipe',
  name: (value) => typeof value === 'string' && value !== '',
  description: (value) => typeof value === 'string' && value !== '',
  recipeYield: (value) =>
    Array.isArray(value) && value.length > 0 && value.every((one) => typeof one === 'string'),
  recipeIngredient: (value) =>
    Array.isArray(value) && value.every((one) => typeof one === 'string' && one !== ''),
  recipeInstructions: (value) => Array.isArray(value) && value.every(isStep),
  totalTime: isDuration,
};
function isDuration(value: unknown): boolean {
  return typeof value === 'string' && /^PT(?=\d)(\d+H)?(\d+M)?$/.test(value);
}
function isStep(value: object): boolean {
  const known: Record<string, (one: unknown) => boolean> = {
    '@type': (one) => one === 'HowToStep',
    position: Number.isInteger,
    text: (one) => typeof one === 'string' && one !== '',
    timeRequired: isDuration,
  };
  return Object.entries(value).every(([name, one]) => known[name]?.(one) === true);
}

const there = { ingredients: ['leek', 'egg', 'salt'], recipes: ['pastry'], places: [] };

test('every recipe goes out valid, claims no diet, and comes back with its amounts and units', () => {
  fc.assert(
    fc.property(anyRecipe('one', there), (one) => {
      const out = toSchemaOrg(one, facts);
      for (const [name, value] of Object.entries(out))
        expect(recipeProperties[name]?.(value), name).toBe(true);
      const plain = { ...one, lines: one.lines.map((line) => ({ ...line, preparation: '' })) };
      const again = readRecipes(JSON.stringify(toSchemaOrg(plain, facts)));
      if (one.lines.length === 0 && one.steps.length === 0) return;
      if ('sentence' in again) throw new Error(again.sentence);
      const read = again.drafts[0]!.sections.flatMap(({ lines }) => lines.map((line) => line.read));
      const exact = (amount: string | null) => (amount ? Rational.parse(amount).toString() : null);
      expect(read.map(({ quantity, quantityTo, unit }) => [quantity, quantityTo, unit])).toEqual(
        one.lines.map(({ amount, amountTo, unit }) =>
          amount ? [exact(amount), exact(amountTo), unit] : [null, null, null],
        ),
      );
    }),
    { numRuns: 300 },
  );
});
