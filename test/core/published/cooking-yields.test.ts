import { describe, expect, test } from 'vitest';
import type { Recipe } from '../../../src/core/facts/recipe.js';
import { Rational } from '../../../src/core/quantity/rational.js';
import { dish, factsOf, food, lines, party } from '../small.js';

const r = Rational.parse;

describe('cooking yields', () => {
  const needs = (recipe: Recipe, portion: string) => {
    const eaten = { recipe: recipe.key, portion: { amount: portion, unit: 'g' } };
    const facts = factsOf([recipe, food('raw')]);
    return lines(party(20, [eaten]), facts).get(`${recipe.key}/l0`)!.bought!.value;
  };

  // USDA Standard Reference 28 (2016), item 17012, yield from 1 lb raw: 0.584. 20 guests × 125 g / 0.584 = 4.28 kg.
  test('20 guests at 125 g of roast leg of lamb want 4.28 kg, by its weight or by its loss', () => {
    const byWeight = dish('roast', '584 g', ['1000 g raw']);
    const byLoss = dish('roast', '8 portions', ['1000 g raw'], { cookingLoss: '41.6' });
    for (const roast of [byWeight, byLoss]) expect(needs(roast, '125').toFixed(0)).toBe('4281');
  });

  // Items 17245, 17243, 17225, 05009, 05140, 23649, 23660: yields from 1 lb raw; and 20029, couscous, 3.05.
  test.each(['0.47', '0.58', '0.69', '0.392', '0.381', '0.821', '0.69', '3.05'])('of yield %s', (edible) => {
    const cooked = dish('cooked', `${r(edible).times(r('1000'))} g`, ['1 kg raw']);
    expect(needs(cooked, '125').equals(r('2500').over(r(edible)))).toBe(true);
    const swells = food('raw', { edibleYield: { yield: edible } });
    const plate = dish('plate', '1 portion', ['125 g raw']);
    const { bought } = lines(party(20, ['plate']), factsOf([plate, swells])).get('plate/l0')!;
    expect(bought!.value.equals(r('2500').over(r(edible)))).toBe(true);
  });
});
