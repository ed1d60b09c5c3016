import { expect, test } from 'vitest';
import { nothingKnown } from '../../src/core/known.js';
import { refusals } from '../../src/core/rules.js';
import { food } from './small.js';

const known = { ...nothingKnown, ingredients: new Set(['butter', 'spread']) };
const said = (...substitutes: object[]) =>
  refusals('ingredient', food('butter', { substitutes }), known).map(({ code, subject }) => [
    code,
    subject.field,
  ]);
const spread = { key: 's1', item: { ingredient: 'spread' }, ratio: '0.8' };

test('a substitute is there, is not the ingredient itself, is more than nothing and stands once', () => {
  expect(said(spread)).toEqual([]);
  expect(said({ ...spread, ratio: '0' })).toEqual([['ratio-zero', 'substitutes/s1/ratio']]);
  expect(said({ ...spread, item: { ingredient: 'butter' } })).toEqual([
    ['substitute-itself', 'substitutes/s1/item'],
  ]);
  expect(said({ ...spread, item: { ingredient: 'ghost' } })).toEqual([
    ['no-such-ingredient', 'substitutes/s1/item'],
  ]);
  expect(said({ ...spread, item: { component: 'ghost' } })).toEqual([
    ['no-such-recipe', 'substitutes/s1/item'],
  ]);
  expect(said(spread, { ...spread, key: 's2' })).toEqual([['substitute-twice', 'substitutes/s2/item']]);
});
