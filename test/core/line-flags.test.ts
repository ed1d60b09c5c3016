import { describe, expect, test } from 'vitest';
import { Rational } from '../../src/core/quantity/rational.js';
import { scale } from '../../src/core/scaling.js';
import { scaledRecipe } from '../../src/core/sheets/scaled-recipe.js';
import { waryOf } from '../../src/core/wary.js';
import { dish, factsOf, food, steps } from './small.js';

// The flags: over twice the recipe or under half of it, once for a line, and nothing is changed by them.
describe('what seldom scales straight', () => {
  const cake = factsOf([
    dish(
      'dish',
      '1 portion',
      ['1 tsp salt', '1 tsp powder', '2 each leaves', '1 tsp powder batch', '100 g butter'],
      steps({ minutes: 30, oven: { heat: 180 } }),
    ),
    food('salt', { name: 'Sea salt flakes' }),
    food('powder', { name: 'Baking powder, aluminium-free' }),
    food('leaves', { name: 'Gelatine leaves' }),
    food('butter', { name: 'Butter, salted' }),
  ]);
  const at = (times: string) => scale(cake.recipes.get('dish')!, Rational.parse(times), cake);
  const flagged = (times: string) =>
    at(times)
      .problems.filter(({ code }) => code.endsWith('-far'))
      .map(({ subject }) => subject.field);

  test.each(['1/2', '1', '2', '0'])('is not flagged at × %s', (times) => expect(flagged(times)).toEqual([]));
  test.each(['0.49', '2.01', '40'])('is flagged once for each line at × %s, and the minutes', (times) => {
    const own = ['lines/l0/amount', 'lines/l1/amount', 'lines/l2/amount', 'steps'];
    expect(flagged(times)).toEqual(own);
    expect(at(times).value[0]!.lines[0]!.amount?.toString()).toBe(times);
  });
  test('says by how much', () => {
    expect(at('4.6').problems.map(({ sentence }) => sentence)).toContain(
      'Sea salt flakes in Dish is scaled × 4.60. Salt seldom scales straight: hold some back and taste.',
    );
  });
});

test.each([
  ['Salt', 'salt'],
  ['Sea salt flakes', 'salt'],
  ['Salt, fine', 'salt'],
  ['Celery salt', 'salt'],
  ['Butter, salted', undefined],
  ['Unsalted butter', undefined],
  ['Salt cod', undefined],
  ['Stock cube, low salt', undefined],
  ['Reduced-salt', undefined],
  ['Baking powder', 'leavening'],
  ['Bicarbonate of soda', 'leavening'],
  ['Dried yeast', 'leavening'],
  ['Yeast extract', undefined],
  ['Nutritional yeast', undefined],
  ['Leaf gelatine', 'setting'],
  ['Gelatin', 'setting'],
  ['Agar flakes', 'setting'],
  ['Pectin', 'setting'],
])('%s is %s', (name, wary) => {
  expect(waryOf(food('x', { name }))).toBe(wary);
});

// A spoonful of oil without a density: the line asks for it and offers the reference's, with its source.
test('a fact that a line waits for is offered from the reference, in words', () => {
  const facts = factsOf([
    dish('dish', '1 portion', ['2 tbsp oil', '1 each oil', '1 g oil']),
    food('oil', { name: 'Olive oil', edibleYield: null }),
  ]);
  const { lines: open } = scaledRecipe(facts.recipes.get('dish')!, undefined, facts).value;
  const [density] = open[0]!.open;
  expect(density!.problem.sentence).toBe("Olive oil: no density, so ml can't be turned into weight.");
  expect(density!.offer).toMatch(/^The reference has 0\.91\d+ g in one ml: .*\(USDA SR28 04053, /);
  expect(open[1]!.open[0]).toMatchObject({ problem: { code: 'no-weight' }, offer: '' });
  expect(open[2]!.open[0]!.problem.code).toBe('no-yield');
});
