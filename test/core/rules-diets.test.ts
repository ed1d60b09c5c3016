import { describe, expect, test } from 'vitest';
import { readAvoids } from '../../src/core/avoid-words.js';
import { kitchen } from '../../src/core/facts/kitchen.js';
import { nothingKnown } from '../../src/core/known.js';
import { refusals } from '../../src/core/rules.js';
import { party } from './small.js';

const known = { ...nothingKnown, places: new Set(['home']), ingredients: new Set(['onion']) };
const codes = (diets: object[], more: object = {}) =>
  refusals(
    'kitchen',
    kitchen.parse({ name: 'Mill Lane', currency: 'GBP', timeZone: 'Europe/London', diets }),
    { ...known, ...more },
  ).map(({ code, subject }) => `${code} ${subject.field}`);
const own = (more: object = {}) => ({
  key: 'mild',
  name: 'mild',
  kind: 'choice',
  avoidsIngredients: ['onion'],
  ...more,
});

describe('a diet of the kitchen’s own', () => {
  test('is told apart from the published ones and from each other', () => {
    expect(codes([own()])).toEqual([]);
    expect(codes([own({ key: 'vegan' })])).toEqual(['diet-published diets/vegan/name']);
    expect(codes([own({ name: ' VEGAN' })])).toEqual(['diet-named diets/mild/name']);
    expect(codes([own(), own({ key: 'mild-2', name: 'Mild' })])).toEqual(['diet-named diets/mild-2/name']);
    expect(codes([own(), own({ name: 'other' })])).toEqual(['key-twice diets/mild']);
  });
  test('avoids something, and only what there is', () => {
    expect(codes([own({ avoidsIngredients: [] })])).toEqual(['diet-avoids-nothing diets/mild/name']);
    expect(codes([own({ avoidsIngredients: ['onoin'] })])).toEqual([
      'no-such-ingredient diets/mild/avoidsIngredients',
    ]);
    expect(codes([own({ avoidsAllergens: ['milky'] })])).toEqual([
      'no-such-allergen diets/mild/avoidsAllergens',
    ]);
  });
  test('stays while a guest has it', () => {
    const dietsOfGuests = new Map([
      ['mild', 'Party'],
      ['vegan', 'Party'],
    ]);
    expect(codes([], { dietsOfGuests })).toEqual(['diet-in-use diets']);
    expect(codes([own()], { dietsOfGuests })).toEqual([]);
  });
});

test('a guest has diets and avoids ingredients that there are', () => {
  const guest = (more: object) => party(4, [], { guests: [{ key: 'ana', group: 'adults', ...more }] });
  const said = (more: object, diets: string[] = []) =>
    refusals('event', guest(more), { ...known, diets: new Set(diets) }).map(({ code }) => code);
  expect(said({ diets: ['mild'] }, ['mild'])).toEqual([]);
  expect(said({ diets: ['mild'] })).toEqual(['no-such-diet']);
  expect(said({ avoids: ['onion'] })).toEqual([]);
  expect(said({ avoids: ['leek'] })).toEqual(['no-such-ingredient']);
});

describe('ingredients as they are said', () => {
  const foods = [
    { key: 'red', name: 'Onions, red' },
    { key: 'brown', name: 'Onion (brown)' },
    { key: 'olive', name: 'Olives' },
    { key: 'olive-oil', name: 'Olive oil' },
  ];
  test.each([
    ['onions, red', ['red']],
    ['onion', ['red', 'brown']],
    ['Olive; onions, red', ['olive', 'red']],
    ['olives and olive oil', ['olive', 'olive-oil']],
    ['', []],
  ])('%s', (text, keys) => {
    expect(readAvoids(text, foods)).toEqual({ value: keys });
  });
  test('what there is not says what is near', () => {
    expect(readAvoids('olivas', foods)).toEqual({
      sentence: 'No ingredient is called olivas. Did you mean Olives?',
    });
    expect(readAvoids('zinc', foods)).toEqual({
      sentence: 'No ingredient is called zinc. Write it as a wish in their own words.',
    });
  });
});
