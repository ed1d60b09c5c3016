import { expect, test } from 'vitest';
import { place } from '../../src/core/facts/place.js';
import { recipe, type Tin } from '../../src/core/facts/recipe.js';
import { nothingKnown } from '../../src/core/known.js';
import { refusals } from '../../src/core/rules.js';

const inTin = (tin: Tin | object, more: object = {}) => {
  const doc = recipe.parse({ key: 'cake', name: 'Cake', yield: { portions: '8' }, tin, ...more });
  return refusals('recipe', doc, nothingKnown).map(({ code, subject }) => [code, subject.field]);
};

test('a tin has sides, and a ring more of it than its hole', () => {
  expect(inTin({ shape: 'round', diameter: '23' })).toEqual([]);
  expect(inTin({ shape: 'round', diameter: '0', depth: '0' })).toEqual([
    ['tin-zero', 'tin/diameter'],
    ['tin-zero', 'tin/depth'],
  ]);
  expect(inTin({ shape: 'loaf', length: '23', width: '0/1' })).toEqual([['tin-zero', 'tin/width']]);
  expect(inTin({ shape: 'ring', diameter: '24', hole: '8' })).toEqual([]);
  expect(inTin({ shape: 'ring', diameter: '24', hole: '24' })).toEqual([['tin-hole', 'tin/hole']]);
});

test('a pan holds something', () => {
  const steps = [{ key: 's', words: 'Boil.', pan: '0' }];
  expect(inTin({ shape: 'square', side: '20' }, { steps })).toEqual([['pan-zero', 'steps/s/pan']]);
  const pans = [
    { key: 'a', name: 'Pot', litres: '0' },
    { key: 'a', name: 'Pan', litres: '4' },
  ];
  const home = place.parse({ key: 'home', name: 'Home', kind: 'home', pans });
  const said = refusals('place', home, nothingKnown).map(({ code, subject }) => [code, subject.field]);
  expect(said).toEqual([
    ['key-twice', 'pans/a'],
    ['pan-zero', 'pans/a/litres'],
  ]);
});
