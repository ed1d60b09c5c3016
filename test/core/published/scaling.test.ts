import { expect, test } from 'vitest';
import { Rational } from '../../../src/core/quantity/rational.js';
import { inUnit, quantity } from '../../../src/core/quantity/units.js';
import { scaledRecipe } from '../../../src/core/sheets/scaled-recipe.js';
import { dish, factsOf, food, lines, party } from '../small.js';

const r = Rational.parse;
const american = { cup: 'us', units: 'us' };

// US Armed Forces Recipe Service, TM 10-412 (2003), card A-1, read in a copy: 348 portions of a recipe for 100 are a
// conversion factor of 3.48; 1.25 lb × 3.48 = 4.35 lb, which is 4 lb and 5.60 oz.
test('348 portions of a recipe for 100: factor 3.48, 1.25 lb become 4 lb 5.60 oz', () => {
  const facts = factsOf([dish('stew', '100 portions', ['1.25 lb onion']), food('onion')], american);
  const { amount } = lines(party(348, ['stew']), facts).get('stew/l0')!;
  expect(amount!.toString()).toBe('4.35');
  const grams = quantity(amount!.minus(r('4')), 'lb', 'us').value;
  expect(inUnit(grams, 'oz', 'us').toFixed(2)).toBe('5.60');
});

// TM 10-412 (2003), card A-1, read in a copy: portions of 3 oz instead of 4 are a factor of 0.75; 348 × 0.75 = 261 of
// 100, factor 2.61; 2 lb × 2.61 = 5.22 lb.
test('348 smaller portions: factor 2.61, 2 lb become 5.22 lb', () => {
  const stew = dish('stew', '100 portions', ['2 lb onion'], {
    yield: { portions: '100', weight: { amount: '25', unit: 'lb' } },
  });
  const facts = factsOf([stew, food('onion')], american);
  const smaller = { recipe: 'stew', portion: { amount: '3', unit: 'oz' } };
  expect(
    lines(party(348, [smaller]), facts)
      .get('stew/l0')!
      .amount!.toString(),
  ).toBe('5.22');
  const asked = { portions: r('348'), portion: { amount: '3', unit: 'oz' } };
  expect(scaledRecipe(stew, asked, facts).value.factor!.toString()).toBe('2.61');
});

// TM 10-412 (2003), card A-1, read in a copy: 102 lb at hand of an ingredient of which 100 portions take 30 lb are 3.40.
test('by what is at hand: 102 lb of 30 lb are 3.40 batches, 340 portions', () => {
  const stew = dish('stew', '100 portions', ['30 lb beef']);
  const facts = factsOf([stew, food('beef')], american);
  const { value } = scaledRecipe(stew, { batches: r('102').over(r('30')) }, facts);
  expect([value.factor!.toString(), value.lines[0]!.need.amount!.toString()]).toEqual(['3.4', '102']);
  expect(value.portions!.toString()).toBe('340');
});
