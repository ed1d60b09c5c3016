import Fraction from 'fraction.js';
import { expect, test } from 'vitest';
import foods from '../../shared/foods.json' with { type: 'json' };
import { exampleKitchen } from '../world.js';
import { millilitres } from './by-hand/units.js';

type Food = {
  id: string;
  item: string;
  yield?: string;
  gramsPerMl?: string;
  measured?: { amount: string; unit: string; grams: string };
  weights: { unit: string; grams: string }[];
  cooked?: { grams: string }[];
};
const all = foods as Food[];
const of = (item: string) => all.find((food) => food.item === item)!;

test('ids are sorted and stand once; every figure is above zero', () => {
  const ids = all.map((food) => food.id);
  expect(ids).toEqual([...new Set(ids)].sort());
  for (const food of all) {
    expect(food.item).toMatch(/^\d{5}$/);
    const cooked = food.cooked ?? [];
    for (const figure of [
      food.yield,
      food.gramsPerMl,
      ...[...food.weights, ...cooked].map((one) => one.grams),
    ])
      if (figure !== undefined) expect(new Fraction(figure).compare(0)).toBe(1);
  }
});

// US cup and spoons of NIST Handbook 44, Appendix C; the fluid ounce is an eighth of a cup.
test('a density is its measured row over the millilitres of that row, to four places', () => {
  for (const { id, gramsPerMl, measured } of all) {
    if (!measured) {
      expect(gramsPerMl, id).toBeUndefined();
      continue;
    }
    const unit =
      measured.unit === 'fl-oz' ? millilitres('cup', 'us')!.div(8) : millilitres(measured.unit, 'us')!;
    const exact = new Fraction(measured.grams).div(unit.mul(measured.amount));
    expect(new Fraction(gramsPerMl!).sub(exact).abs().compare('1/20000'), id).toBeLessThanOrEqual(0);
  }
});

// USDA National Nutrient Database for Standard Reference, Release 28 (2016): refuse and household weights by item.
test('figures are those published for the item', () => {
  const yields = {
    '11352': '0.75',
    '11282': '0.9',
    '11124': '0.89',
    '11011': '0.53',
    '11246': '0.44',
    '17011': '0.79',
  };
  for (const [item, figure] of Object.entries(yields)) expect(of(item).yield).toBe(figure);
  const cups = {
    '20081': '125',
    '20083': '137',
    '20080': '120',
    '19335': '200',
    '19334': '220',
    '01145': '227',
  };
  for (const [item, grams] of Object.entries(cups))
    expect(of(item).measured).toMatchObject({ amount: '1', unit: 'cup', grams });
  const pieces = { '11282': '110', '11215': '3', '01123': '50', '09152': '48', '18375': '7.2' };
  for (const [item, grams] of Object.entries(pieces)) expect(of(item).weights[0]!.grams).toBe(grams);
});

test('the example kitchen takes the same figures from the same items', () => {
  let compared = 0;
  for (const { key, edibleYield, density, weights } of exampleKitchen().ingredients) {
    const same = (source: string, mine: string, theirs: (food: Food) => string | undefined) => {
      const item = /USDA SR28 (\d{5})/.exec(source)?.[1];
      if (!item) return;
      expect(mine, `${key} ${item}`).toBe(theirs(of(item)));
      compared++;
    };
    same(edibleYield!.source, edibleYield!.yield, (food) => food.yield);
    if (density) same(density.source, density.gramsPerMl, (food) => food.gramsPerMl);
    for (const { unit, grams, source } of weights)
      same(source, grams, (food) => food.weights.find((one) => one.unit === unit)?.grams);
  }
  expect(compared).toBeGreaterThan(50);
});
