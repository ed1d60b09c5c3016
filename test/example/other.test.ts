import Fraction from 'fraction.js';
import { expect, test } from 'vitest';
import { allergensOf } from '../../src/core/allergens.js';
import { costOfEvent } from '../../src/core/costing.js';
import { parseWorkbook, workbookText } from '../../src/core/exchange/workbook.js';
import { byKey } from '../../src/core/facts/facts.js';
import { otherKitchen } from '../world.js';
import { workedByHand } from './by-hand.js';

// The two ways of working it out agree on kitchens nobody has looked at: other money, measures, cups and list.
const seeds = Array.from({ length: 40 }, (_, i) => i + 1);

test('one seed always gives the same kitchen, another seed another', () => {
  expect(otherKitchen(7)).toEqual(otherKitchen(7));
  expect(otherKitchen(7)).not.toEqual(otherKitchen(8));
  const { kitchen } = otherKitchen(7);
  expect(kitchen).toMatchObject({ units: 'us', cup: 'us', paper: 'Letter', allergenList: 'us' });
  expect(new Set(seeds.map((seed) => otherKitchen(seed).kitchen.currency))).toEqual(new Set(['JPY', 'KWD']));
});

test('a generated kitchen, whole or with gaps, is one that the workbook takes', () => {
  for (const seed of seeds)
    for (const gaps of [true, false]) {
      const kitchen = otherKitchen(seed, { gaps });
      expect(parseWorkbook(workbookText(kitchen))).toEqual({ workbook: kitchen });
    }
});

test.each(seeds)('kitchen %i: batches, costs and allergens by the program are those by hand', (seed) => {
  const book = otherKitchen(seed, { gaps: false });
  const facts = {
    kitchen: book.kitchen,
    places: byKey(book.places),
    ingredients: byKey(book.ingredients),
    recipes: byKey(book.recipes),
  };
  const answers = workedByHand(book);
  for (const event of book.events) {
    const answer = answers[event.key]!;
    const { value: cost } = costOfEvent(event, facts);
    expect(new Fraction(`${cost.exact.n}/${cost.exact.d}`).toFraction()).toBe(answer.cost.exact);
    expect([cost.complete, cost.total, cost.aGuest]).toEqual([
      true,
      answer.cost.minor,
      answer.cost.aGuestMinor,
    ]);
    for (const { need, cost: minor } of cost.courses.flatMap((course) => course.dishes)) {
      const expected = answer.dishes[need.dish.key]!;
      const batches = need.recipes.map(({ recipe, factor }) => [
        recipe.key,
        factor && new Fraction(`${factor.n}/${factor.d}`).toFraction(),
      ]);
      expect(minor).toBe(expected.minor);
      const cells = allergensOf(need.recipe, facts).map(({ item, state, unknown }) => [
        item.id,
        state,
        unknown,
      ]);
      const byHand = Object.entries(expected.allergens).map(([id, cell]) => [id, cell.state, cell.unknown]);
      expect(cells).toEqual(byHand);
      expect(Object.fromEntries(batches)).toEqual(expected.batches);
    }
  }
});
