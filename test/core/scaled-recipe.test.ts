import { expect, test } from 'vitest';
import { byKey, type Facts } from '../../src/core/facts/facts.js';
import { Rational } from '../../src/core/quantity/rational.js';
import { scaledRecipe } from '../../src/core/sheets/scaled-recipe.js';
import { scaledRecipeSheet } from '../../src/core/sheets/scaled-recipe-sheet.js';
import { exampleKitchen } from '../world.js';

const { kitchen, places, ingredients, recipes } = exampleKitchen();
const facts: Facts = {
  kitchen,
  places: byKey(places),
  ingredients: byKey(ingredients),
  recipes: byKey(recipes),
};
const of = (key: string) => facts.recipes.get(key)!;

test('the base recipe makes one batch, and its lines add up to its cost', () => {
  const { value } = scaledRecipe(of('tomato-sauce'), undefined, facts);
  expect(value.factor?.toString()).toBe('1');
  expect(value.made).toEqual({ value: Rational.of(2100), base: 'g' });
  expect(value.lines.reduce((sum, { cost }) => sum + (cost ?? 0), 0)).toBe(value.cost);
});

test('46 portions of 110 g of 20 that weigh 2.2 kg are 2.3 batches and 5.06 kg', () => {
  const portion = { amount: '110', unit: 'g' };
  const { value } = scaledRecipe(of('hummus'), { portions: Rational.of(46), portion }, facts);
  expect(value.factor?.toString()).toBe('2.3');
  expect(value.made?.value.toString()).toBe('5060');
  expect(value.portion?.value.toString()).toBe('110');
  expect(value.lines.reduce((sum, { cost }) => sum + (cost ?? 0), 0)).toBe(value.cost);
});

test('batches scale portions, and what is not stated in portions scales all the same', () => {
  const half = { batches: Rational.of(1, 2) };
  expect(scaledRecipe(of('hummus'), half, facts).value.portions?.toString()).toBe('10');
  const stock = scaledRecipe(of('vegetable-stock'), half, facts).value;
  expect(stock.made).toEqual({ value: Rational.of(1500), base: 'ml' });
  expect(stock.portions).toBeUndefined();
});

test('a label that was not read is asked about, and the sheet says so too', () => {
  const answer = scaledRecipe(of('beef-rolls'), undefined, facts);
  const unread = answer.problems.filter(({ code }) => code === 'label-not-read');
  expect(unread.map(({ subject }) => subject.key)).toEqual(['horseradish-sauce']);
  expect(scaledRecipeSheet(answer).problems).toEqual(answer.problems);
});
