import { expect, test } from 'vitest';
import { ingredient } from '../../src/core/facts/ingredient.js';
import { figuresOf, foodOf, foods, foodsLike } from '../../src/core/foods.js';

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

test('every food makes figures that an ingredient can keep', () => {
  for (const food of foods)
    expect(ingredient.safeParse({ key: 'x', name: food.name, ...figuresOf(food) }).error).toBeUndefined();
});
