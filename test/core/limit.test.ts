import { expect, test } from 'vitest';
import type { Facts } from '../../src/core/facts/facts.js';
import type { Recipe } from '../../src/core/facts/recipe.js';
import { batchesFrom } from '../../src/core/limit.js';
import { Rational } from '../../src/core/quantity/rational.js';
import { readMeasure } from '../../src/core/reading-measures.js';
import { dish, factsOf, food } from './small.js';

/** So many batches of what one has of an ingredient, or why it can't be said. */
const from = (
  recipe: Recipe,
  have: string,
  of: string,
  facts: Facts,
  as: 'bought' | 'prepared' = 'bought',
) => {
  const read = readMeasure(have);
  if (!('value' in read)) throw new Error(read.sentence);
  const found = batchesFrom(recipe, { have: read.value, of, as }, facts);
  return found instanceof Rational ? found.toString() : found.sentence;
};

const plum = food('plum', { edibleYield: { yield: '0.8' } });
const egg = food('egg', { weights: [{ unit: 'each', grams: '60', of: 'bought' }] });

// 2 kg of stoned plums are 2.5 kg bought; 3.2 kg bought make 3.2 / 2.5 = 1.28 batches, prepared 3.2 / 2 = 1.6.
test('3.2 kg of plums: as bought, and prepared where that is said', () => {
  const jam = dish('jam', '10 portions', ['2 kg plum', '1 kg sugar']);
  const facts = factsOf([jam, plum, food('sugar')]);
  expect(from(jam, '3.2 kg', 'plum', facts)).toBe('1.28');
  expect(from(jam, '3.2 kg', 'plum', facts, 'prepared')).toBe('1.6');
});

// A pie takes 500 g of compote, half of a batch that has 2 kg of prepared plums, 1 kg: 1.25 kg bought, and 300 g bought
// of its own. 3.1 kg / 1.55 kg = 2.
test('through a component, together with lines of its own', () => {
  const compote = dish('compote', '1 kg', ['2 kg plum']);
  const pie = dish('pie', '8 portions', ['500 g @compote', '300 g plum bought']);
  const facts = factsOf([compote, pie, plum]);
  expect(from(pie, '3.1 kg', 'plum', facts)).toBe('2');
});

test('a weight at hand of what goes in by the piece, and pieces of what goes in by weight', () => {
  const cake = dish('cake', '8 portions', ['3 each egg']);
  const curd = dish('curd', '8 portions', ['180 g egg bought']);
  const facts = factsOf([cake, curd, egg]);
  expect(from(cake, '720 g', 'egg', facts)).toBe('4');
  expect(from(curd, '7 each', 'egg', facts)).toBe(Rational.of(7, 3).toString());
});

// Herbs: straight to twice the recipe, then half of the base for each further one; 1 tbsp becomes 6 at × 10. Hot chilli: a
// quarter, 4 tsp at × 10 (Canadian Spice Association, "Spice usage"). Turned round, 6 tbsp is × 10.
test('herbs and chilli are turned round along their slopes', () => {
  const stew = dish('stew', '4 portions', ['1 tbsp thyme herb', '1 tsp chilli chilli']);
  const facts = factsOf([stew, food('thyme'), food('chilli')]);
  expect(from(stew, '6 tbsp', 'thyme', facts)).toBe('10');
  expect(from(stew, '4 tsp', 'chilli', facts)).toBe('10');
  expect(from(stew, '1 1/2 tbsp', 'thyme', facts)).toBe('1.5');
});

// 1 tbsp as a herb and 1 tbsp straight: 4 tbsp at × 2, 5.5 at × 3, so 7 tbsp are 2 + 3 / 1.5 = 4.
test('a herb line beside a straight one', () => {
  const stew = dish('stew', '4 portions', ['1 tbsp thyme herb', '1 tbsp thyme']);
  const facts = factsOf([stew, food('thyme')]);
  expect(from(stew, '7 tbsp', 'thyme', facts)).toBe('4');
});

// 3 eggs a batch, whole: 7 eggs make 7/3 batches. Once for each batch begun: 500 ml of 150 ml each are 3 batches.
test('whole pieces and what goes in once for each batch: as many as there are', () => {
  const cake = dish('cake', '8 portions', ['3 each egg pieces', '150 ml milk batch']);
  const facts = factsOf([cake, egg, food('milk')]);
  expect(from(cake, '7 each', 'egg', facts)).toBe(Rational.of(7, 3).toString());
  expect(from(cake, '450 g', 'egg', facts)).toBe(Rational.of(7, 3).toString());
  expect(from(cake, '500 ml', 'milk', facts)).toBe('3');
  expect(from(cake, '100 ml', 'milk', facts)).toContain('at least 150 ml');
  expect(from(cake, '50 g', 'egg', facts)).toContain('takes at least 1, and that is less');
});

test('what can’t set the amount says so plainly', () => {
  const base = dish('base', '10 portions', ['2 each egg']);
  const bake = dish('bake', '8 portions', [
    'taste salt',
    '3 each egg pieces',
    '60 g egg bought',
    '5 each @base pieces',
  ]);
  const facts = factsOf([base, bake, egg, food('salt'), food('plum')]);
  expect(from(bake, '1 kg', 'salt', facts)).toContain('takes no stated amount of Salt');
  expect(from(bake, '1 kg', 'plum', facts)).toContain('takes no stated amount of Plum');
  expect(from(bake, '12 each', 'egg', facts)).toContain(
    'is in Base, whose own amount does not grow straight',
  );
  const mixed = dish('bake', '8 portions', ['3 each egg pieces', '60 g egg bought']);
  expect(from(mixed, '12 each', 'egg', factsOf([mixed, egg]))).toContain('whole pieces');
});

test('a fact that is missing is asked for, never assumed', () => {
  const cake = dish('cake', '8 portions', ['3 each egg', '200 ml oil']);
  const facts = factsOf([cake, food('egg'), food('oil')]);
  expect(from(cake, '720 g', 'egg', facts)).toBe('Egg: no weight for one each.');
  expect(from(cake, '1 kg', 'oil', facts)).toContain('Oil: no density');
});
