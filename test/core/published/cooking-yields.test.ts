import { describe, expect, test } from 'vitest';
import type { Recipe } from '../../../src/core/facts/recipe.js';
import { figuresOf, foodOf, foods } from '../../../src/core/foods.js';
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

// USDA Standard Reference 28 (2016), table WEIGHT, rows "yield from ..." of the items named: what is left once cooked,
// to three figures, and whether it starts from the bought weight, bone and trim in it, or from the prepared weight.
test.each([
  ['lamb-leg', 'roasted', '17012', '0.584', 'bought'],
  ['lamb-shoulder', 'roasted', '17245', '0.58', 'bought'],
  ['lamb-shoulder', 'braised', '17243', '0.47', 'bought'],
  ['lamb-mince', 'grilled', '17225', '0.69', 'prepared'],
  ['chicken-whole', 'roasted, meat and skin', '05009', '0.392', 'bought'],
  ['duck', 'roasted, meat and skin', '05140', '0.381', 'bought'],
  ['beef-tri-tip', 'roasted', '23649', '0.821', 'bought'],
  ['beef-brisket', 'braised', '23660', '0.69', 'bought'],
  ['couscous', 'steeped', '20029', '3.05', 'prepared'],
])('the reference: %s, %s (item %s) leaves %s of what is %s', (id, name, item, published, from) => {
  const found = figuresOf(foodOf(id)!).cookedYields.find((one) => one.name === name);
  expect(found).toMatchObject({ yield: published, from, source: expect.stringContaining(`SR28 ${item}`) });
});

test('a cooked yield of the reference is its row over what it starts from, and one with bone starts as bought', () => {
  const all = foods.flatMap(({ cooked = [] }) => cooked);
  expect(all.length).toBeGreaterThan(60);
  for (const { yield: share, grams, of, from, text, item } of all) {
    const exact = r(grams).over(r(of));
    expect(Math.abs(exact.over(r(share)).toNumber() - 1), item).toBeLessThan(0.0025);
    if (/with refuse|ready-to/.test(text)) expect(from, item).toBe('bought');
  }
});
