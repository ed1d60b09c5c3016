import { describe, expect, test } from 'vitest';
import { checkYield, makes } from '../../src/core/batch.js';
import { Rational } from '../../src/core/quantity/rational.js';
import { scale } from '../../src/core/scaling.js';
import { dish, factsOf, food, lines, party } from './small.js';

const at = (facts: ReturnType<typeof factsOf>, guests: number, recipe: string, key: string) =>
  lines(party(guests, [recipe]), facts).get(key)!;
const said = (value: { value: Rational; base: string } | undefined) =>
  value && `${value.value} ${value.base}`;

// The pie takes 3 of the 4 kg that the ragù makes, the ragù 0.6 of 2 l sauce, the sauce 0.5 of
// 3 l stock: 40 / 12 pies × 3/4 × 0.6/2 × 0.5/3 = 0.125 batch of stock, so 1 kg of its 8 kg bones.
test('a component three deep is taken in the exact amount', () => {
  const facts = factsOf([
    dish('pie', '12 portions', ['3 kg @ragu']),
    dish('ragu', '4 kg', ['600 ml @sauce']),
    dish('sauce', '2 l', ['500 ml @stock']),
    dish('stock', '3 l', ['8 kg bones']),
    food('bones'),
  ]);
  expect(said(at(facts, 40, 'pie', 'stock/l0').bought)).toBe('1000 g');
});

// 5 guests: the tart takes 2.5 eggs in its filling and 2.5 in its glaze, both the same custard of 1 egg: 5 × 0.9 = 4.5
// eggs, rounded up once to 5, not twice 2.25 to 3 and 3.
test('a component used twice in a dish rounds its whole pieces once', () => {
  const facts = factsOf([
    dish('tart', '1 portion', ['0.45 batch @custard', '0.45 batch @custard']),
    dish('custard', '1 portion', ['1 each egg pieces', '100 ml milk']),
    food('egg'),
    food('milk'),
  ]);
  expect(at(facts, 5, 'tart', 'custard/l0').amount!.toString()).toBe('5');
  expect(at(facts, 5, 'tart', 'custard/l1').amount!.toString()).toBe('450');
});

// A cake for 12 with 1.01 dozen eggs, 12.12, takes 25.25 for 25 guests: 26 eggs, not 3 dozen.
test('of a dozen each single piece counts', () => {
  const facts = factsOf([
    dish('cake', '12 portions', ['1.01 dozen egg pieces', '12.12 each egg pieces']),
    food('egg'),
  ]);
  expect(said(at(facts, 25, 'cake', 'cake/l0').bought)).toBe('26 each');
  expect(said(at(facts, 25, 'cake', 'cake/l1').bought)).toBe('26 each');
});

describe('prepared and bought', () => {
  const onion = food('onion', {
    edibleYield: { yield: '0.9' },
    density: { gramsPerMl: '0.7' },
    weights: [
      { unit: 'each', grams: '110', of: 'prepared' },
      { unit: 'bag', grams: '1000', of: 'bought' },
    ],
  });
  const facts = factsOf([
    dish('dip', '1 portion', [
      '90 g onion',
      '90 g onion bought',
      '2 each onion',
      '1 bag onion',
      '90 ml onion',
      '90 ml onion bought',
    ]),
    onion,
  ]);
  const both = (key: string) => {
    const { prepared, bought } = at(facts, 1, 'dip', key);
    return [prepared!.toString(), said(bought)];
  };

  // A weight is the prepared amount: 90 g / 0.9 = 100 g bought. Stated bought: 90 g × 0.9 = 81 g prepared.
  test('a weight is prepared unless the line says bought', () => {
    expect(both('dip/l0')).toEqual(['90', '100 g']);
    expect(both('dip/l1')).toEqual(['81', '90 g']);
  });

  // So is a volume: 90 ml / 0.9 = 100 ml bought, and at 0.7 g a millilitre 63 g; stated bought 90 × 0.9 × 0.7 = 56.7 g.
  test('a volume is prepared unless the line says bought', () => {
    expect(both('dip/l4')).toEqual(['63', '100 ml']);
    expect(both('dip/l5')).toEqual(['56.7', '90 ml']);
  });

  // A count is pieces as bought: two onions of 110 g edible are 220 g; a bag of 1 kg bought is 900 g edible.
  test('a count is pieces as bought', () => {
    expect(both('dip/l2')).toEqual(['220', '2 each']);
    expect(both('dip/l3')).toEqual(['900', '1 bag']);
  });
});

// Volume to weight by the density only: 2 tbsp of oil are 30 ml × 0.92 = 27.6 g. Without it the weight is asked for.
test('a volume weighs by its density, else the density is asked for', () => {
  const oil = (more: object) => factsOf([dish('dip', '1 portion', ['2 tbsp oil']), food('oil', more)]);
  expect(at(oil({ density: { gramsPerMl: '0.92' } }), 1, 'dip', 'dip/l0').prepared!.toString()).toBe('27.6');
  const { value, problems } = scale(oil({}).recipes.get('dip')!, Rational.one, oil({}));
  expect(value[0]!.lines[0]!.prepared).toBeUndefined();
  expect(problems.map(({ sentence }) => sentence)).toEqual([
    "Oil: no density, so ml can't be turned into weight.",
  ]);
});

// A line to taste has no amount at any number of guests: it is said, and nothing is made of it.
test('to taste is said, not counted', () => {
  const facts = factsOf([dish('dip', '1 portion', ['taste salt', '1 g salt']), food('salt')]);
  const { value, problems } = scale(facts.recipes.get('dip')!, Rational.of(40), facts);
  expect(value[0]!.lines.map(({ amount }) => amount?.toString())).toEqual([undefined, '40']);
  expect(problems[0]).toMatchObject({ code: 'to-taste', weight: 'check' });
});

// A loaf is not a portion: 2 loaves of a bread for 20 portions is asked about; 2 portions are a tenth of it.
test('a component by the loaf is asked about, by portions, pieces or batches it is known', () => {
  const facts = factsOf([
    dish('board', '1 portion', ['2 loaf @bread', '2 portion @bread', '2 each @bread', '2 batch @bread']),
    dish('bread', '20 portions', ['1 kg flour']),
    food('flour'),
  ]);
  const { value, problems } = scale(facts.recipes.get('board')!, Rational.one, facts);
  expect(value[0]!.lines.map(({ batches }) => batches?.toString())).toEqual([undefined, '0.1', '0.1', '2']);
  expect(problems.map(({ code }) => code)).toEqual(['no-recipe-yield']);
  expect(value[1]!.factor).toBeUndefined();
});

describe('what a batch makes', () => {
  const grams = (more: object, cut = ['1 kg meat', '0.5 kg meat']) => {
    const facts = factsOf([dish('roast', '8 portions', cut, more), food('meat')]);
    return makes(facts.recipes.get('roast')!, facts).g?.toString();
  };

  // 1.5 kg less 40 % is 900 g. A loss of all or more, or no lines, leaves it unknown.
  test('is its lines less the loss in cooking where no weight is stated', () => {
    expect(grams({ cookingLoss: '40' })).toBe('900');
    expect(grams({ cookingLoss: '40' }, ['1.5 kg meat', 'taste meat'])).toBe('900');
    expect(grams({ cookingLoss: '40' }, ['taste meat'])).toBeUndefined();
    expect([grams({}), grams({ cookingLoss: '100' }), grams({ cookingLoss: '150' })]).toEqual(
      Array(3).fill(undefined),
    );
    expect(grams({ cookingLoss: '40' }, [])).toBeUndefined();
  });

  // Lines of 1.2 kg said to make 12 kg: a slipped decimal. Said to make 1 kg: nothing odd.
  test('is asked about where it is three times its lines, or a third', () => {
    const odd = (weight: string) => {
      const facts = factsOf([dish('soup', weight, ['1.2 kg leek']), food('leek')]);
      return checkYield(facts.recipes.get('soup')!, facts).map(({ sentence }) => sentence);
    };
    expect(odd('12 kg')).toEqual([
      'Soup: the lines come to 1200 g, and it is said to make 12000 g. One of them may have slipped.',
    ]);
    expect([odd('1 kg'), odd('0.3 kg').length]).toEqual([[], 1]);
  });
});
