import { expect, test } from 'vitest';
import type { Event } from '../../../src/core/facts/event.js';
import type { Facts } from '../../../src/core/facts/facts.js';
import { wholeCost } from '../../../src/core/whole-cost/cost-of-party.js';
import { dish, factsOf, food, pack, party } from '../small.js';

const bowls = (each: string, packed = '1 kg at 300') =>
  factsOf([dish('bowl', '1 portion', [`${each} oats`]), food('oats', pack(packed))]);
const partyOf = (key: string, guests: number, dishes: (string | object)[] = ['bowl']): Event =>
  party(guests, dishes, { key, name: key });
const bought = (event: Event, facts: Facts, beside: Event[] = []) =>
  wholeCost(event, facts, 'bought', beside);
const paid = (event: Event, facts: Facts, beside: Event[]) =>
  bought(event, facts, beside).food.packs.map(({ packs, receipt, cost }) => [packs, receipt, cost]);

// Two parties of four, 100 g of oats each: 0.4 kg and 0.4 kg of a 1 kg bag at 3.00 are one bag, 1.50 each. With six
// each, 0.6 and 0.6 are two bags, 3.00 each. Alone either needs a bag of its own.
test('0.4 + 0.4 kg of a 1 kg bag is one bag, 0.6 + 0.6 is two', () => {
  const facts = bowls('100 g');
  const two = (guests: number) => [partyOf('a', guests), partyOf('b', guests)] as const;
  for (const [guests, packs, receipt] of [
    [4, 1, 300],
    [6, 2, 600],
  ] as const) {
    const [a, b] = two(guests);
    expect(paid(a, facts, [a, b])).toEqual([[packs, receipt, receipt / 2]]);
    expect(paid(b, facts, [a])).toEqual([[packs, receipt, receipt / 2]]);
    expect(paid(a, facts, [])).toEqual([[1, 300, 300]]);
  }
});

// 3 × 100 g of a 300 g pack is one pack, by no rounding noise two; 0.7 of them too.
test('what just fills a pack is one pack', () => {
  const facts = bowls('0.1 kg', '300 g at 299');
  const three = ['a', 'b', 'c'].map((key) => partyOf(key, 1));
  expect(three.map((event) => paid(event, facts, three)[0])).toEqual([
    [1, 299, 100],
    [1, 299, 100],
    [1, 299, 99],
  ]);
});

// 1 guest, 2 guests: 100 g and 200 g of one bag at 1.00: a third and two thirds, 33 and 67.
test('each event pays by what it uses, to the penny', () => {
  const facts = bowls('100 g', '1 kg at 100');
  const [one, two] = [partyOf('z', 1), partyOf('a', 2)];
  expect([paid(one, facts, [two]), paid(two, facts, [one])]).toEqual([[[1, 100, 33]], [[1, 100, 67]]]);
});

// An onion cake takes 450 g of onions prepared, 500 g bought at nine tenths; a soup takes 300 g as bought. Together
// 800 g of a kilo at 1.20: one bag, 5/8 of it to the cake, 75p, and 3/8 to the soup, 45p. Used are 60p and 36p.
test('prepared and bought uses of one ingredient go in one pack, spread over the dishes by what they use', () => {
  const facts = factsOf([
    dish('cake', '1 portion', ['450 g onion']),
    dish('soup', '1 portion', ['300 g onion bought', '0.2 l water']),
    food('onion', { edibleYield: { yield: '0.9' }, ...pack('1 kg at 120') }),
    food('water', { notBought: true }),
  ]);
  const event = partyOf('a', 1, ['cake', 'soup']);
  const { food: inPacks, total } = bought(event, facts);
  expect(inPacks.packs.map(({ need, packs }) => [need.toString(), packs])).toEqual([['0.8', 1]]);
  expect(inPacks.dishes.map(({ cost }) => cost)).toEqual([75, 45]);
  const used = wholeCost(event, facts, 'used');
  expect(used.food.dishes.map(({ cost }) => cost)).toEqual([60, 36]);
  expect([total, used.total, used.food.packs]).toEqual([120, 96, []]);
});

test('of what nobody eats no pack is bought', () => {
  const eaters = { counts: [{ group: 'adults', guests: 0 }] };
  const event = partyOf('a', 4, [{ recipe: 'bowl', eaters }]);
  expect(bought(event, bowls('100 g'))).toMatchObject({ total: 0, complete: true, food: { packs: [] } });
});

test('an egg of which two fifths are used is a whole egg bought; the pack is what the kitchen prefers', () => {
  const egg = food('egg', {
    weights: [{ unit: 'each', grams: '50' }],
    packs: [
      {
        key: 'tray',
        size: { amount: '30', unit: 'each' },
        prices: [{ key: 'p', date: '2026-01-05', price: 690 }],
      },
      {
        key: 'loose',
        preferred: true,
        size: { amount: '1', unit: 'each' },
        prices: [{ key: 'p', date: '2026-01-05', price: 30 }],
      },
    ],
  });
  const facts = factsOf([dish('glaze', '1 portion', ['20 g egg']), egg]);
  const event = partyOf('a', 1, ['glaze']);
  expect([wholeCost(event, facts, 'used').total, bought(event, facts).total]).toEqual([12, 30]);
});

test('events at another price do not share packs: a done one was bought as it was served', () => {
  const facts = bowls('100 g');
  const then = bowls('100 g', '1 kg at 250');
  const served = {
    date: '2026-11-28',
    kitchen: then.kitchen,
    places: [...then.places.values()],
    ingredients: [...then.ingredients.values()],
    recipes: [...then.recipes.values()],
  };
  const done: Event = { ...partyOf('done', 4), state: 'done', served };
  const next = partyOf('next', 4);
  expect(paid(next, facts, [done])).toEqual([[1, 300, 300]]);
  expect(paid(done, facts, [next])).toEqual([[1, 250, 250]]);
});

test('a missing price is named, in either view; a use that is not known beside leaves the share open', () => {
  const unpriced = factsOf([
    dish('bowl', '1 portion', ['100 g oats', '50 g honey']),
    food('oats', pack('1 kg at 300')),
    food('honey'),
  ]);
  const { complete, problems, food: known } = bought(partyOf('a', 4), unpriced);
  expect([complete, known.exact.toString(), known.dishes[0]!.complete]).toEqual([false, '300', false]);
  expect(problems.map(({ sentence }) => sentence)).toEqual(['No price for Honey.']);

  const facts = factsOf([
    dish('bowl', '1 portion', ['100 g oats']),
    dish('drink', '1 portion', ['100 ml oats']),
    food('oats', pack('1 kg at 300')),
  ]);
  const alone = bought(partyOf('a', 4), facts);
  const beside = bought(partyOf('a', 4), facts, [partyOf('b', 4, ['drink'])]);
  expect([alone.complete, beside.complete, beside.food.dishes[0]!.complete]).toEqual([true, false, false]);
  expect(beside.problems.map(({ sentence }) => sentence)).toEqual([
    "Oats: no density, so ml can't be turned into weight.",
  ]);
});
