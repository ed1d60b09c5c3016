import { expect, test } from 'vitest';
import { readAmounts } from '../../../../src/core/exchange/draft/amounts.js';
import {
  askOf,
  begin,
  doubtsOf,
  foodsIn,
  inAll,
  namesTwo,
} from '../../../../src/core/exchange/draft/draft-line.js';
import type { Known } from '../../../../src/core/exchange/draft/kitchen-names.js';
import { needsOf } from '../../../../src/core/exchange/draft/presets.js';
import { readLine } from '../../../../src/core/exchange/lines/read-line.js';
import { readMethod } from '../../../../src/core/exchange/method/read-method.js';
import { ingredient } from '../../../../src/core/facts/ingredient.js';

const known = (text: string): Known => ({ text, item: { ingredient: 'x' }, archived: false });
const exact = { kind: 'exact' as const, known: known('Squash') };
const plain = ingredient.parse({ key: 'x', name: 'Chickpeas' });
const weighed = { ...plain, weights: [{ unit: 'tin', grams: '400', of: 'bought' as const, source: '' }] };

test('a plain line whose food the kitchen has needs nothing', () =>
  expect(doubtsOf(readLine('200 g squash'), exact, 'Squash', plain)).toEqual([]));

test('what the reader doubts stays a doubt, whatever the match', () =>
  expect(doubtsOf(readLine('700 g squash, peeled'), exact, 'Squash', plain).join()).toMatch(
    /order of the words/,
  ));

test('a name that is only near is asked, with what the kitchen has', () =>
  expect(
    doubtsOf(
      undefined,
      { kind: 'near', known: [known('Rye flour'), known('Plain flour')] },
      'flour',
      undefined,
    ),
  ).toEqual(['This kitchen has no “flour”; it has “Rye flour” and “Plain flour”.']));

test('a line without a food is asked, and so is one the kitchen has not', () => {
  expect(doubtsOf(undefined, { kind: 'none' }, ' ', undefined)).toEqual([
    'Which ingredient it is, is not known.',
  ]);
  expect(doubtsOf(undefined, { kind: 'none' }, 'sumac', undefined)).toEqual([
    'This kitchen has no “sumac” yet.',
  ]);
  expect(doubtsOf(undefined, undefined, 'sumac', undefined)).toEqual([]);
});

test('a line without an amount is asked about, unless it is seasoning', () => {
  const asked = (text: string, food: string) => doubtsOf(readLine(text), exact, food, plain).join(' ');
  for (const [text, food] of [
    ['oil for deep frying', 'Vegetable oil'],
    ['a few sprigs of thyme', 'Thyme'],
  ] as const)
    expect(asked(text, food), text).toMatch(/^How much is not said: as it stands it goes in to taste/);
  for (const [text, food] of [
    ['salt', 'Salt'],
    ['freshly ground black pepper', 'Black pepper, ground'],
    ['lemon juice, to taste', 'Lemon juice'],
    ['200 g squash', 'Squash'],
  ] as const)
    expect(asked(text, food), text).toBe('');
});

test('a weight of what is trimmed is asked about, where its words do not say which', () => {
  const asked = (text: string, edible: string | null) =>
    doubtsOf(readLine(text), exact, 'Leg of lamb', {
      weights: [],
      edibleYield: edible === null ? null : { yield: edible, source: '' },
    });
  const which = ['Whether that is the weight as bought or of the part that is eaten is not said.'];
  expect(asked('2.5 kg leg of lamb', '0.79')).toEqual(which);
  expect(asked('2.5 kg leg of lamb', '3.05')).toEqual(which);
  for (const edible of ['1', '0.97', null])
    expect(asked('2.5 kg leg of lamb', edible), `${edible}`).toEqual([]);
  expect(asked('2 legs of lamb', '0.79')).toEqual([]);
  expect(asked('2.5 kg leg of lamb, boned', '0.79').join()).toMatch(/^The weight is read as bought/);
});

test('what a tin holds is asked where the kitchen does not know, never taken', () => {
  const read = readLine('2 x 400 g tins chickpeas');
  expect(doubtsOf(read, exact, 'Chickpeas', plain)).toEqual([
    'The line says that one tin holds 400 g, which this kitchen does not know yet.',
  ]);
  expect(doubtsOf(read, exact, 'Chickpeas', weighed)).toEqual([]);
  const drained = { weights: [{ ...weighed.weights[0]!, grams: '240' }] };
  expect(doubtsOf(read, exact, 'Chickpeas', drained)).toEqual([
    'The line says that one tin holds 400 g; this kitchen knows 240 g and goes by that.',
  ]);
  expect(begin(read)).toMatchObject({ amount: '2', unit: 'tin', holds: { amount: '400', unit: 'g' } });
  expect(inAll(read)).toEqual({ amount: '800', amountTo: null, unit: 'g' });
  expect(inAll(readLine('2 onions'))).toBeUndefined();
});

test('juice of one lemon is a lemon, with its juice as what is to be done', () =>
  expect(begin(readLine('juice of 1 lemon'))).toMatchObject({
    amount: '1',
    unit: 'each',
    food: 'lemon',
    preparation: 'juice',
  }));

test('what is no line keeps no food, so that nobody takes it for one unasked', () =>
  expect(begin(readLine('Preheat the oven to 180C and line a tin.')).food).toBe(''));

test.each([
  ['3', 'clove', 'What one clove of Chickpeas weighs is not known yet.'],
  ['3', 'each', 'What one piece of Chickpeas weighs is not known yet.'],
  ['2', 'tbsp', 'What a measure of Chickpeas weighs is not known yet.'],
  ['2', 'tin', undefined],
  ['200', 'g', undefined],
  [null, 'each', undefined],
])('%s %s of what has a tin’s weight alone asks: %s', (amount, unit, ask) =>
  expect(askOf({ amount, unit }, weighed)).toBe(ask),
);

test.each([
  ['', null, null],
  ['700', '700', null],
  ['1 1/2', '1.5', null],
  ['2–3', '2', '3'],
  ['2 - 3', '2', '3'],
  ['½ to ¾', '0.5', '0.75'],
])('%s is read as %s to %s', (typed, amount, amountTo) =>
  expect(readAmounts(typed)).toEqual({ value: { amount, amountTo } }),
);

test.each(['3–2', '2–2', '2-3-4', 'some', '0'])('%s is refused with a sentence', (typed) =>
  expect(readAmounts(typed)).toHaveProperty('sentence'),
);

test('salt and pepper are two foods', () =>
  expect(foodsIn('salt and black pepper')).toEqual(['salt', 'black pepper']));

const needs = (words: string) => needsOf(readMethod(words)[0]!);

test('a heat that is stated is no preset; one that is not stated is, and says so', () => {
  expect(needs('Roast at 220C for 40 minutes.')).toMatchObject({
    needs: { oven: { heat: 220, tolerance: 10 }, attended: false },
    preset: [],
  });
  expect(needs('Roast for 40 minutes.')).toMatchObject({
    needs: { oven: { heat: 200 } },
    preset: ['oven'],
    kind: 'a roast',
  });
});

test('a simmer takes a ring, chilling a shelf of the fridge, and neither an oven', () => {
  expect(needs('Simmer for 20 minutes.').needs).toMatchObject({ rings: 1, oven: null, attended: false });
  expect(needs('Chill for 2 hours.').needs).toMatchObject({ fridgeShelves: 1, oven: null });
  expect(needs('Braise on the hob over a low heat for 2 hours.').needs).toMatchObject({
    rings: 1,
    oven: null,
  });
});

test('the reader says of two foods what this module looks for', () =>
  expect(readLine('salt and pepper').because).toContain(namesTwo));

test('what goes in to taste does not say so twice', () => {
  const said = (text: string) => begin(readLine(text)).preparation;
  expect([
    said('salt, to taste'),
    said('salt to taste, finely ground'),
    said('5 g salt, or to taste'),
  ]).toEqual(['', 'finely ground', 'or to taste']);
});
