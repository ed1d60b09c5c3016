import { describe, expect, test } from 'vitest';
import type { Rational } from '../../../src/core/quantity/rational.js';
import { inUnit } from '../../../src/core/quantity/units.js';
import { dish, factsOf, food, lines, party } from '../small.js';

const needed = (guests: number, recipe: ReturnType<typeof dish>, foods: string[], ways = {}) =>
  lines(party(guests, [recipe.key]), factsOf([recipe, ...foods.map((key) => food(key))], ways));
const said = (figure: Rational | undefined) => figure?.toString();

// Canadian Spice Association, "Spice usage": herbs straight to twice the recipe, then half of the base for each further
// multiple, so 1 tbsp at ten times is 6; hot chilli a quarter, so 1 tsp is 4; pepper and warm spices straight.
describe('the spice rule', () => {
  const curry = dish('curry', '1 portion', ['1 tbsp thyme herb', '1 tsp chilli chilli', '1 tsp cumin']);
  test.each([
    [1, '1', '1', '1'],
    [2, '2', '2', '2'],
    [3, '2.5', '2.25', '3'],
    [4, '3', '2.5', '4'],
    [10, '6', '4', '10'],
  ])('at %i times: %s tbsp of herbs, %s tsp of chilli, %s of cumin', (times, herb, chilli, cumin) => {
    const need = needed(times, curry, ['thyme', 'chilli', 'cumin']);
    const amounts = ['curry/l0', 'curry/l1', 'curry/l2'].map((key) => said(need.get(key)!.amount));
    expect(amounts).toEqual([herb, chilli, cumin]);
  });
});

// Gisslen, Professional Cooking, baker's per cent, read in a copy: the per cents of a dough come to 377.5; for 96 oz of
// it the flour is 96 / 3.775 = 25.43 oz, for 3000 g it is 794.7 g. The ingredients are invented, their sum is not.
describe('per cent of the flour', () => {
  const shares = ['100 percent flour flour', '65 percent water', '200 percent raisin', '12.5 percent butter'];
  const bread = (weight: object) => dish('bread', '1 portion', shares, { yield: { portions: '1', weight } });
  const foods = ['flour', 'water', 'raisin', 'butter'];

  test('96 oz of dough take 25.43 oz of flour', () => {
    const need = needed(1, bread({ amount: '96', unit: 'oz' }), foods);
    const flour = need.get('bread/l0')!;
    expect(flour.unit).toBe('g');
    expect(inUnit(flour.amount!, 'oz', 'us').toFixed(2)).toBe('25.43');
  });

  test('3000 g of dough take 794.7 g of flour, and the lines come to 3000 g', () => {
    const need = needed(1, bread({ amount: '3000', unit: 'g' }), foods);
    expect(need.get('bread/l0')!.amount!.toFixed(1)).toBe('794.7');
    const all = [...need.values()].map(({ amount }) => amount!);
    expect(said(all.reduce((sum, one) => sum.plus(one)))).toBe('3000');
  });
});

// USDA Standard Reference 28 (2016), table WEIGHT: 1 lb of lamb leg with its bone yields 265 g roasted (17012), .584 of
// it; 1 lb of chicken as bought 178 g of roast meat and skin (05009), .392; a dry cup of couscous 528 g (20029), 3.05.
describe('stated once cooked', () => {
  const cooked = (name: string, part: string, from: 'bought' | 'prepared', edible: string) =>
    food('meat', { edibleYield: { yield: edible }, cookedYields: [{ name, yield: part, from }] });
  const bought = (meat: ReturnType<typeof food>, line: string) => {
    const plate = dish('plate', '1 portion', [line]);
    const { prepared, bought } = lines(party(20, ['plate']), factsOf([plate, meat])).get('plate/l0')!;
    return [said(prepared), bought!.value.toFixed(0)];
  };

  test('20 guests × 125 g of roast leg of lamb are 2.5 kg / .584 = 4.28 kg bought, with no trim taken off again', () => {
    const lamb = cooked('roasted', '0.584', 'bought', '0.79');
    expect(bought(lamb, '125 g meat once roasted')).toEqual(['2500', '4281']);
  });

  test('20 × 100 g of roast chicken are 2 kg / .392 = 5.10 kg bought with bone', () => {
    expect(bought(cooked('roasted', '0.392', 'bought', '0.68'), '100 g meat once roasted')[1]).toBe('5102');
  });

  test('20 × 150 g of cooked couscous are 3 kg / 3.05 = 0.98 kg, for it swells', () => {
    expect(bought(cooked('boiled', '3.05', 'prepared', '1'), '150 g meat once boiled')[1]).toBe('984');
  });
});
