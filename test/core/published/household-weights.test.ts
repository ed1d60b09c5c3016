import { describe, expect, test } from 'vitest';
import foods from '../../../shared/foods.json' with { type: 'json' };
import type { Cup } from '../../../src/core/facts/kitchen.js';
import { figuresOf, foodOf } from '../../../src/core/foods.js';
import { Rational } from '../../../src/core/quantity/rational.js';
import { quantity } from '../../../src/core/quantity/units.js';
import { weigh } from '../../../src/core/weighing.js';
import { food } from '../small.js';

// United States Department of Agriculture, National Nutrient Database for Standard Reference, Release 28 (2016), table
// WEIGHT, by item number: grams in one US cup or spoon. A density is kept to four places, so a cup comes within 0.02 g.
const grams = (gramsPerMl: string, amount: string, unit: string, cup: Cup = 'us') => {
  const { prepared } = weigh(
    food('food', { density: { gramsPerMl } }),
    quantity(Rational.parse(amount), unit, cup),
    false,
  );
  return prepared as Rational;
};

const densityOf = (id: string) => {
  const found = foods.find((one) => one.id === id) as { gramsPerMl?: string };
  return found.gramsPerMl!;
};

describe('a cup of a food weighs what is published', () => {
  test.each([
    ['flour-plain', '20081', 125],
    ['flour-bread', '20083', 137],
    ['flour-wholemeal', '20080', 120],
    ['sugar-caster', '19335', 200],
    ['sugar-icing', '19336', 120],
    ['sugar-brown', '19334', 220],
    ['butter', '01145', 227],
    ['milk-whole', '01077', 244],
    ['buttermilk', '01088', 245],
    ['cream-double', '01053', 238],
    ['cream-half', '01049', 242],
    ['cream-soured', '01056', 230],
    ['yogurt', '01116', 245],
    ['oil-olive', '04053', 216],
    ['honey', '19296', 339],
    ['molasses', '19304', 337],
    ['vinegar-cider', '02048', 239],
    ['rice-white', '20044', 185],
    ['cornflour', '20027', 128],
    ['cocoa', '19165', 86],
    ['couscous', '20028', 173],
    ['quinoa', '20035', 170],
    ['chickpeas-dried', '16056', 200],
    ['almonds', '12061', 143],
    ['almonds-ground', '12061', 95],
    ['onion', '11282', 160],
    ['parsley', '11297', 60],
    ['sugar-icing-sifted', '19336', 100],
    ['sugar-brown-loose', '19334', 145],
    ['rice-cooked', '20045', 158],
    ['chickpeas-boiled', '16057', 164],
  ])('%s (item %s): %s g', (id, _item, published) => {
    expect(Math.abs(grams(densityOf(id), '1', 'cup').toNumber() - published)).toBeLessThan(0.02);
  });
});

// The same table: spoon rows and cup rows of one food differ by up to 2 %.
describe('a spoon weighs what is published, within 2 %', () => {
  test.each([
    ['butter', 'tbsp', 14.2],
    ['oil-olive', 'tbsp', 13.5],
    ['oil-olive', 'tsp', 4.5],
    ['honey', 'tbsp', 21],
    ['sugar-caster', 'tsp', 4.2],
    ['salt', 'tbsp', 18],
    ['salt', 'cup', 292],
    ['baking-powder', 'tsp', 4.6],
    ['bicarbonate-of-soda', 'tsp', 4.6],
    ['yeast-dried', 'tsp', 4],
    ['cocoa', 'tbsp', 5.4],
  ])('%s, a %s: %s g', (id, unit, published) => {
    expect(Math.abs(grams(densityOf(id), '1', unit).toNumber() / published - 1)).toBeLessThan(0.02);
  });
});

// The same table: grams of the edible part of one piece.
test.each([
  ['onion', 'each', '11282', '110'],
  ['garlic', 'clove', '11215', '3'],
  ['egg', 'each', '01123', '50'],
  ['egg-small', 'each', '01123', '38'],
  ['egg-medium', 'each', '01123', '44'],
  ['egg-extra-large', 'each', '01123', '56'],
  ['egg-jumbo', 'each', '01123', '63'],
  ['egg-white', 'each', '01124', '33'],
  ['egg-yolk', 'each', '01125', '17'],
  ['lemon-juice', 'lemon', '09152', '48'],
  ['yeast-dried', 'packet', '18375', '7.2'],
])('%s, one %s (item %s): %s g', (id, unit, item, published) => {
  const { weights, edibleYield } = figuresOf(foodOf(id)!);
  const [weight] = weights.filter((one) => one.unit === unit);
  expect(weight?.source).toContain(item);
  const { prepared } = weigh(
    food('food', { weights, edibleYield }),
    quantity(Rational.one, unit, 'us'),
    true,
  );
  expect((prepared as Rational).toString()).toBe(published);
});

// Arithmetic on item 01088: 250 ml of a cup that is 236.5882365 ml and holds 245 g are 258.9 g, not 245 and not 250.
test('a metric cup of buttermilk weighs 258.9 g', () => {
  const exact = '490000000/473176473'; // 245 / 236.5882365, reduced
  expect(grams(exact, '1', 'cup', 'metric').toFixed(1)).toBe('258.9');
  expect(grams(densityOf('buttermilk'), '1', 'cup', 'metric').toFixed(1)).toBe('258.9');
});

// A volume without a density asks for one; a gram a millilitre is never taken for granted.
test('without a density a cup has no weight', () => {
  const { prepared } = weigh(food('food'), quantity(Rational.one, 'cup', 'us'), false);
  expect(prepared).toEqual({ missing: 'density', unit: 'ml' });
});

// USDA AMS 56 (2000), read in a copy: a dozen large eggs weigh 24 oz; less 12 % shell (item 01123), each has 49.9 g,
// against 50 g in the table WEIGHT.
test('a large egg holds 50 g, by the dozen 49.9', () => {
  const egg = food('egg', {
    edibleYield: { yield: '0.88' },
    weights: [{ unit: 'each', grams: '50', of: 'prepared' }],
  });
  const { prepared } = weigh(egg, quantity(Rational.one, 'dozen', 'metric'), true);
  expect((prepared as Rational).toString()).toBe('600');
  const byTheDozen = quantity(Rational.parse('24'), 'oz', 'us').value.over(Rational.of(12));
  expect(byTheDozen.times(Rational.parse('0.88')).toFixed(1)).toBe('49.9');
});
