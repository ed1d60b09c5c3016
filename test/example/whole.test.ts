import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import type { Rational } from '../../src/core/quantity/rational.js';
import { wholeCost } from '../../src/core/whole-cost/cost-of-party.js';
import type { WholeCost } from '../../src/core/whole-cost/whole-cost.js';
import { answers, book, facts } from './answers.js';

// The whole cost of every event of the example against formulas worked another way: as used, in packs bought for it
// alone, and in packs bought for all three parties together; exact, and equal to the penny.
const plain = (figure: Rational) => new Fraction(`${figure.n}/${figure.d}`).toFraction();

const views: Record<string, (event: (typeof book.events)[number]) => WholeCost> = {
  used: (event) => wholeCost(event, facts, 'used'),
  bought: (event) => wholeCost(event, facts, 'bought'),
  together: (event) => wholeCost(event, facts, 'bought', book.events),
};

describe.each(Object.entries(views))('%s', (view, costed) => {
  test.each(book.events)('$key', (event) => {
    const { exact, total, aGuest, food, parts, complete } = costed(event);
    expect(complete).toBe(true);
    expect({
      exact: plain(exact),
      minor: total,
      aGuestMinor: aGuest,
      food: { exact: plain(food.exact), minor: food.cost },
      parts: Object.fromEntries(
        parts.map((part) => [part.line.key, { exact: plain(part.exact!), minor: part.cost }]),
      ),
    }).toEqual(answers[event.key]!.whole[view as 'used']);
  });
});

test('what the three parties pay for packs they buy together is the receipt', () => {
  const costs = book.events.map(views.together!);
  const packs = costs.flatMap(({ food }) => food.packs);
  const receipts = new Map(packs.map(({ ingredient, receipt }) => [ingredient.key, receipt]));
  const paid = costs.reduce((all, { food }) => all + Number(food.exact.toString()), 0);
  expect(paid).toBe([...receipts.values()].reduce((all, receipt) => all + receipt, 0));
});

// The README's 18: four jars at 1.65 for 475 g of the tea and 175 g of the lunch.
test('the tea and the lunch share four jars of horseradish sauce, 4.82 and 1.78', () => {
  const paid = book.events.flatMap((event) =>
    views.together!(event)
      .food.packs.filter(({ ingredient }) => ingredient.key === 'horseradish-sauce')
      .map(({ packs, receipt, cost }) => [event.key, packs, receipt, cost]),
  );
  expect(paid).toEqual([
    ['birthday-tea', 4, 660, 482],
    ['retirement-lunch', 4, 660, 178],
  ]);
});
