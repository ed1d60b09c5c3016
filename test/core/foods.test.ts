import { expect, test } from 'vitest';
import { ingredient } from '../../src/core/facts/ingredient.js';
import { figuresOf, foodOf, foods, foodsLike, wholeDespite } from '../../src/core/foods.js';

const namesLike = (name: string) => foodsLike(name).map((food) => food.name);

test('an ingredient finds the reference food of its name', () => {
  expect(namesLike('Leek')[0]).toBe('Leek');
  expect(namesLike('Leeks, trimmed')[0]).toBe('Leek');
  expect(namesLike('Carrots')[0]).toBe('Carrot');
  expect(namesLike('Stardust')).toEqual([]);
});

test('the figures carry their item number, and leave out what is not published', () => {
  const leek = figuresOf(foodOf('leek')!);
  expect(leek.edibleYield).toEqual({
    yield: '0.44',
    source: 'USDA SR28 11246, less tops, root end and skin',
  });
  expect(figuresOf(foodOf('almonds')!).edibleYield).toBeNull();
});

test('a leek entered as eaten whole is worth a look; butter and a leek at 44 % are not', () => {
  const at = (name: string, share: string) =>
    wholeDespite(ingredient.parse({ key: 'x', name, edibleYield: { yield: share } }))?.item;
  expect(at('Leeks', '1')).toBe('11246');
  expect(at('Leek', '0.44')).toBeUndefined();
  expect(at('Butter, unsalted', '1')).toBeUndefined();
});

test('every food makes figures that an ingredient can keep', () => {
  for (const food of foods)
    expect(ingredient.safeParse({ key: 'x', name: food.name, ...figuresOf(food) }).error).toBeUndefined();
});
