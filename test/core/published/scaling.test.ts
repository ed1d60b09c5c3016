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

// TM 10-412 (2003), card A-1(2), read in a copy: ounces as decimal parts of a pound, to two places.
test('ounces as decimal pounds', () => {
  const published = '.06 .13 .19 .25 .31 .38 .44 .50 .56 .63 .69 .75 .81 .88 .94 1.00'.split(' ');
  for (const [i, pounds] of published.entries()) {
    const grams = quantity(Rational.of(i + 1), 'oz', 'us').value;
    expect(inUnit(grams, 'lb', 'us').toFixed(2).replace(/^0/, '')).toBe(pounds);
  }
});

// TM 10-412 (2003), card A-1(3), read in a copy: 6 gallons for 100 portions are 19.98 gallons for 333, which are 19
// gallons, 3 quarts, 1 pint, 1 cup, 10 tablespoons and 2.64 teaspoons.
test('333 portions of 6 gallons a hundred: 19.98 gallons, to the teaspoon', () => {
  const facts = factsOf([dish('soup', '100 portions', ['6 gallon stock']), food('stock')], american);
  const { amount } = lines(party(333, ['soup']), facts).get('soup/l0')!;
  expect(amount!.toString()).toBe('19.98');
  let left = quantity(amount!, 'gallon', 'us').value;
  const whole = ['gallon', 'quart', 'pint', 'cup', 'tbsp'].map((unit) => {
    const count = inUnit(left, unit, 'us').floor();
    left = left.minus(quantity(Rational.of(count), unit, 'us').value);
    return count;
  });
  expect(whole).toEqual([19n, 3n, 1n, 1n, 10n]);
  expect(inUnit(left, 'tsp', 'us').toFixed(2)).toBe('2.64');
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
