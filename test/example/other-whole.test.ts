import Fraction from 'fraction.js';
import { expect, test } from 'vitest';
import { type CostLine, costLines } from '../../src/core/facts/cost-line.js';
import { byKey, type Workbook } from '../../src/core/facts/facts.js';
import type { Rational } from '../../src/core/quantity/rational.js';
import { wholeCost } from '../../src/core/whole-cost/cost-of-party.js';
import { otherKitchen } from '../world.js';
import { workedByHand } from './by-hand.js';

// The whole cost of kitchens nobody has looked at, in yen and dinars of a thousand fils, worked both ways: every basis
// of a cost, shelves and a drive that differ by kitchen, as used, in packs alone and in packs bought together.
const seeds = Array.from({ length: 20 }, (_, i) => i + 1);
const plain = (figure: Rational) => new Fraction(`${figure.n}/${figure.d}`).toFraction();

const linesOf = (seed: number): CostLine[] => {
  const bases: CostLine['by'][] = [
    { rate: 1300 + seed, person: null, hours: 'cooking', people: 2, guestsEach: null },
    { rate: 977, person: null, hours: '7/3', people: 2, guestsEach: 3 + (seed % 11) },
    { rate: 1111, person: null, hours: 'driving', people: 1 + (seed % 3), guestsEach: null },
    { rate: 61, person: null, hours: 'ovens', people: 1, guestsEach: null },
    { rate: 37, person: null, hours: 'rings', people: 1, guestsEach: null },
    { step: 730, holds: 5 + seed, each: '1.5', spare: '12.5' },
    { percent: '7.5', of: 'food' },
    { aGuest: 23 },
    { fixed: 1999 },
    { percent: '10/3', of: 'costs' },
  ];
  return costLines.parse(bases.map((by, i) => ({ key: `c${i}`, name: `Cost ${i}`, kind: 'other', by })));
};

const costed = (seed: number): Workbook => {
  const book = otherKitchen(seed, { gaps: false });
  const shelf = (steps: number) => (steps % 2 === 0 ? String(1 + (seed % 4)) : null);
  const barn = { ...book.places[0]!, key: 'barn', kind: 'venue' as const, drive: 10 + seed };
  return {
    ...book,
    places: [...book.places, { ...barn, ovens: [{ ...barn.ovens[0]!, shelves: 1 + (seed % 5) }] }],
    recipes: book.recipes.map((recipe) => ({
      ...recipe,
      steps: recipe.steps.map((step, i) => ({
        ...step,
        attended: (seed + i) % 3 > 0,
        oven: i % 2 === 0 ? { heat: 180, tolerance: 0 } : null,
        portionsPerShelf: recipe.yield.portions ? shelf(i + seed) : null,
        where: i % 4 === 0 ? 'venue' : 'either',
      })),
    })),
    events: book.events.map((event, i) => ({
      ...event,
      place: i % 2 === 0 ? 'barn' : 'home',
      costs: linesOf(seed + i),
    })),
  };
};

test.each(seeds)(
  'kitchen %i: the whole cost by the program is that by hand, to the smallest unit',
  (seed) => {
    const book = costed(seed);
    const { kitchen, events } = book;
    const facts = {
      kitchen,
      places: byKey(book.places),
      ingredients: byKey(book.ingredients),
      recipes: byKey(book.recipes),
    };
    const byHand = workedByHand(book);
    for (const event of events) {
      const views = {
        used: wholeCost(event, facts, 'used'),
        bought: wholeCost(event, facts, 'bought'),
        together: wholeCost(event, facts, 'bought', events),
      };
      for (const [view, { exact, total, aGuest, food, parts, complete }] of Object.entries(views)) {
        const whole = byHand[event.key]!.whole[view]!;
        expect([complete, plain(exact), total, aGuest]).toEqual([
          true,
          whole.exact,
          whole.minor,
          whole.aGuestMinor,
        ]);
        expect([food.cost, ...parts.map(({ cost }) => cost)]).toEqual([
          whole.food.minor,
          ...Object.values(whole.parts).map(({ minor }) => minor),
        ]);
      }
    }
  },
);
