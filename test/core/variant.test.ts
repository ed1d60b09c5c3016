import { expect, test } from 'vitest';
import { recipe } from '../../src/core/facts/recipe.js';
import { differences, variantOf } from '../../src/core/variant.js';

const base = recipe.parse({
  key: 'mash',
  name: 'Mash',
  yield: { portions: '10' },
  origin: 'example',
  lines: [
    { key: 'potato', amount: '2', unit: 'kg', item: { ingredient: 'potato' } },
    { key: 'butter', amount: '200', unit: 'g', item: { ingredient: 'butter' } },
    { key: 'salt', amount: null, item: { ingredient: 'salt' }, scales: 'taste' },
  ],
});

test('a variant begins as a copy that differs in nothing', () => {
  const copy = variantOf(base, 'mash-oil', 'Mash with oil');
  expect(copy).toMatchObject({ variantOf: 'mash', origin: 'own', lines: base.lines });
  expect(differences(base, copy)).toEqual({ lines: [], steps: [], fields: [] });
});

test('lines changed, added and left out are told apart', () => {
  const [potato, , salt] = base.lines;
  const oil = { ...base.lines[1]!, key: 'oil', item: { ingredient: 'oil' } };
  const variant = {
    ...variantOf(base, 'x', 'X'),
    lines: [{ ...potato!, amount: '1.8' }, oil, salt!],
    keepingDays: 2,
  };
  expect(differences(base, variant)).toEqual({
    lines: [
      { was: potato, is: { ...potato!, amount: '1.8' } },
      { was: undefined, is: oil },
      { was: base.lines[1], is: undefined },
    ],
    steps: [],
    fields: ['keepingDays'],
  });
});
