import { expect, test } from 'vitest';
import { byKey, type Facts } from '../../src/core/facts/facts.js';
import { minutePrice } from '../../src/core/minute-price.js';
import { exampleKitchen } from '../world.js';

const factsWith = (change: (kitchen: ReturnType<typeof exampleKitchen>) => void = () => undefined) => {
  const book = exampleKitchen();
  book.kitchen.tax = null;
  book.kitchen.roundTo = 50;
  const tea = book.events.find(({ key }) => key === 'birthday-tea')!;
  tea.costs = [{ key: 'c1', name: 'Hands', kind: 'hands', by: { aGuest: 900 }, note: '' }];
  tea.price.groups = [];
  change(book);
  const facts: Facts = {
    kitchen: book.kitchen,
    places: byKey(book.places),
    ingredients: byKey(book.ingredients),
    recipes: byKey(book.recipes),
  };
  return { tea, facts };
};

// The tea for its 38 guests is 149.05 of food and 342.00 of hands, 491.05; 30 % kept that is 701.49, 18.46 a guest.
test('the menu of a party for as many guests costs what it costs, and the price goes up to the half pound', () => {
  const { tea, facts } = factsWith();
  const { cost, sold, holds } = minutePrice(tea, 38, '30', facts);
  expect([cost.total, sold.aGuest, holds]).toEqual([49_105, 1850, 'firm']);
  expect(minutePrice(tea, 76, '30', facts).cost.guests).toBe(76);
  expect(minutePrice(tea, 38, null, facts).sold.aGuest).toBeUndefined();
});

test('a guessed price makes it a guess, a missing one the least it can be, from what is known alone', () => {
  const guessed = factsWith(({ ingredients }) => {
    ingredients.find(({ key }) => key === 'leek')!.packs[0]!.prices.at(-1)!.guess = true;
  });
  expect(minutePrice(guessed.tea, 38, '30', guessed.facts).holds).toBe('guess');
  const missing = factsWith(({ ingredients }) => {
    ingredients.find(({ key }) => key === 'leek')!.packs = [];
  });
  const { cost, sold, holds } = minutePrice(missing.tea, 38, '30', missing.facts);
  expect([holds, cost.complete]).toEqual(['least', false]);
  // Without the leeks' 7.84: 483.21 / 0.7 / 38 = 18.17.
  expect([cost.total, sold.aGuest]).toEqual([48_321, 1850]);
  expect(cost.problems.map(({ sentence }) => sentence)).toContain('No price for Leek.');
});
