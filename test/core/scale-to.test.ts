import { expect, test } from 'vitest';
import { tin } from '../../src/core/facts/recipe.js';
import { Rational } from '../../src/core/quantity/rational.js';
import { type Asked, scaleTo } from '../../src/core/scale-to.js';
import { dish, factsOf, food } from './small.js';

const r = Rational.parse;
const cake = dish('cake', '12 portions, 1.5 kg', ['600 g flour'], {
  tin: { shape: 'round', diameter: '20', count: 2 },
});
const soup = dish('soup', '2 l', ['1 l water']);
const facts = factsOf([cake, soup, food('flour'), food('water')]);

const comes = (asked: Asked, recipe = cake) => {
  const { value, problems } = scaleTo(recipe, asked, facts);
  const { factor, portions, left } = value;
  return [factor?.toString(), portions?.toString(), left.toString(), ...problems.map(({ code }) => code)];
};
const measure = (amount: string, unit: string) => ({ amount, unit });

test('portions, of its own size and of another', () => {
  expect(comes({ portions: r('30') })).toEqual(['2.5', '30', '0']);
  expect(comes({ portions: r('30'), portion: measure('100', 'g') })).toEqual(['2', '30', '0']);
});

// 4.5 kg / 1.5 kg = 3 batches, 36 portions; of 100 g each, 45.
test('a weight or volume in all, with as many portions as that makes', () => {
  expect(comes({ total: measure('4.5', 'kg') })).toEqual(['3', '36', '0']);
  expect(comes({ total: measure('4.5', 'kg'), portion: measure('100', 'g') })).toEqual(['3', '45', '0']);
  expect(comes({ total: measure('5', 'l') }, soup)).toEqual(['2.5', undefined, '0']);
  expect(comes({ total: measure('5', 'l') })).toEqual([undefined, undefined, '0', 'no-recipe-yield']);
});

test('by an ingredient, and by tin', () => {
  expect(comes({ have: measure('900', 'g'), of: 'flour', as: 'bought' })).toEqual(['1.5', '18', '0']);
  const bigger = tin.parse({ shape: 'round', diameter: '25', count: 2 });
  expect(comes({ tin: bigger })).toEqual(['1.5625', '18.75', '0']);
  expect(comes({ tin: bigger }, soup)).toEqual([undefined, undefined, '0', 'no-tin']);
});

// 30 portions are 2.5 batches: 3 are made, 36 portions, and half a batch is left over.
test('whole batches are rounded up from what is asked, and say what is left over', () => {
  expect(comes({ portions: r('30'), wholeBatches: true })).toEqual(['3', '36', '0.5']);
  expect(comes({ portions: r('24'), wholeBatches: true })).toEqual(['2', '24', '0']);
});

// 900 g of flour are 1.5 batches: one is made whole, and half a batch is not. 500 g make none.
test('whole batches of what is at hand are rounded down, for there is no more of it', () => {
  const whole = (amount: string) =>
    comes({ have: measure(amount, 'g'), of: 'flour', as: 'bought', wholeBatches: true });
  expect(whole('900')).toEqual(['1', '12', '-0.5']);
  expect(whole('1200')).toEqual(['2', '24', '0']);
  expect(whole('500')).toEqual([undefined, undefined, '0', 'not-a-limit']);
});
