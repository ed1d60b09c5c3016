import { expect, test } from 'vitest';
import { readLine } from '../../../../src/core/exchange/lines/read-line.js';

test.each([
  ['2/3 carrots', 'two thirds, or two to three'],
  ['3 bean salad', 'three, or a salad of three beans'],
  ['1 lemon juice', 'the fruit, or its juice'],
  ['1 cup milk (whole or 2%)', 'two kinds'],
  ['3 peppers (1 red, 1 yellow, 1 green)', 'three kinds'],
  ['2 bay leaves and a few sprigs of thyme', 'two foods'],
  ['1 (3- to 4-pound) pork shoulder', 'a size that is a range'],
  ['Toppings', 'a food, or a heading'],
])('%s is never sure: %s', (text) => {
  expect(readLine(text).sure).toBe(false);
});

test('a figure that belongs to a name is no amount', () => {
  expect(readLine('5 spice powder')).toMatchObject({ quantity: null, food: '5 spice powder' });
  expect(readLine('2 slices 7-grain bread')).toMatchObject({
    quantity: '2',
    unit: 'slice',
    food: '7-grain bread',
  });
});

test('packs stand for themselves where what they hold is not said', () => {
  expect(readLine('2 x 400 g tins')).toMatchObject({
    quantity: '2',
    unit: 'tin',
    food: '',
    pack: { amount: '400', unit: 'g' },
    sure: false,
  });
});

test('a spoon is known by its size', () => {
  expect(readLine('2 x 15ml spoons sugar')).toMatchObject({ quantity: '2', unit: 'tbsp', pack: null });
  expect(readLine('1 x 5ml spoon salt')).toMatchObject({ quantity: '1', unit: 'tsp', note: '5ml' });
});

test('fresh stays with the name of what is chopped fresh', () => {
  expect(readLine('1 tbsp fresh finely chopped dill')).toMatchObject({
    food: 'fresh dill',
    note: 'finely chopped',
  });
  expect(readLine('1/2 cup fresh squeezed orange juice').food).toBe('orange juice');
});
