import { expect, test } from 'vitest';
import { costOfEvent } from '../../src/core/costing.js';
import type { Facts } from '../../src/core/facts/facts.js';
import { costing } from '../../src/core/sheets/costing.js';
import { dish, factsOf, food, pack, party } from './small.js';

const cost = (facts: Facts, guests: number, ...dishes: string[]) => {
  const { value, problems } = costOfEvent(party(guests, dishes), facts);
  return { ...value, said: problems.map(({ sentence }) => sentence) };
};

// Leeks at 2.40 a kilo, 90 % edible: 10 guests want 2 kg prepared, 2.222 kg bought, 533.33p; butter 100 g of a 250 g
// pack at 2.25 is 90p. Together 623.33p, 6.23: 5.33 and 0.90. A guest 62.33p, 0.62.
test('a dish costs what it uses, and its lines add up to the penny', () => {
  const facts = factsOf([
    dish('tart', '10 portions', ['2 kg leek', '100 g butter']),
    food('leek', { edibleYield: { yield: '0.9' }, ...pack('1 kg at 240') }),
    food('butter', pack('250 g at 225')),
  ]);
  const { exact, total, aGuest, complete, courses } = cost(facts, 10, 'tart');
  expect([exact.toString(), total, aGuest, complete]).toEqual(['1870/3', 623, 62, true]);
  expect(courses[0]!.dishes[0]).toMatchObject({ cost: 623, lines: [533, 90] });
});

// 0.4 of an egg for 1 guest is 20 g beaten; eggs by the dozen at 3.60 are 30p each: used 0.4 × 30p = 12p. In whole
// pieces one egg is used, 30p. What is bought is one egg either way; this cost is of what is used.
test('0.4 of an egg costs 0.4 of an egg; in whole pieces, one', () => {
  const egg = food('egg', { ...pack('12 each at 360'), weights: [{ unit: 'each', grams: '50' }] });
  const of = (text: string) => factsOf([dish('glaze', '1 portion', [text]), egg]);
  expect(cost(of('0.4 each egg'), 1, 'glaze').total).toBe(12);
  expect(cost(of('0.4 each egg pieces'), 1, 'glaze').total).toBe(30);
  expect(cost(of('20 g egg'), 1, 'glaze').total).toBe(12);
});

// 3 cloves of 3 g edible, 87 % of what is bought, are 9 / 0.87 = 10.3448 g of a kilo at 8.70: 9p. 99 g of peeled onion
// are 110 g bought, one onion of 99 g edible at 90 %, a third of a net of 3 at 0.60: 20p.
test('pieces are priced by the kilo and weights by the piece, as bought', () => {
  const garlic = food('garlic', {
    edibleYield: { yield: '0.87' },
    weights: [{ unit: 'clove', grams: '3', of: 'prepared' }],
    ...pack('1 kg at 870'),
  });
  const onion = food('onion', {
    edibleYield: { yield: '0.9' },
    weights: [{ unit: 'each', grams: '99', of: 'prepared' }],
    ...pack('3 each at 60'),
  });
  const facts = factsOf([dish('dip', '1 portion', ['3 clove garlic', '99 g onion']), garlic, onion]);
  const { exact, courses } = cost(facts, 1, 'dip');
  expect([exact.toString(), courses[0]!.dishes[0]!.lines]).toEqual(['29', [9, 20]]);
});

// Tap water is not bought: a true zero, with no price asked for, and the cost complete.
test('what is not bought costs nothing, truly', () => {
  const facts = factsOf([
    dish('broth', '10 portions', ['3 l water', '1 kg bones']),
    food('water', { notBought: true, edibleYield: null }),
    food('bones', pack('1 kg at 150')),
  ]);
  const { total, complete, courses } = cost(facts, 10, 'broth');
  expect([total, complete, courses[0]!.dishes[0]!.lines]).toEqual([150, true, [0, 150]]);
});

// The latest day stands; of one day, the last entered: 3.00 of 1 March over 2.00 of February, then 3.20 of that same day.
test('the price that stands', () => {
  const prices = [
    { key: 'a', date: '2026-03-01', price: 300 },
    { key: 'b', date: '2026-02-01', price: 200 },
    { key: 'c', date: '2026-03-01', price: 320 },
  ];
  const { packs } = pack('1 kg at 100');
  const rice = food('rice', { packs: [{ ...packs[0], prices }] });
  expect(cost(factsOf([dish('rice-dish', '1 portion', ['1 kg rice']), rice]), 1, 'rice-dish').total).toBe(
    320,
  );
});

// Salt is used by weight in one dish (10 g of 1 kg at 1.00, 1p) and by the pinch, of unknown weight, in the other. Rice
// costs 2.00 in each. What is known of salt stays with salt: 1p and not complete; rice is 4.00, and the whole 4.01.
test('by ingredient, a cost in part unknown keeps what is known and is marked', () => {
  const facts = factsOf([
    dish('plain', '1 portion', ['1 kg rice', '10 g salt']),
    dish('pinched', '1 portion', ['1 kg rice', '1 pinch salt']),
    food('rice', pack('1 kg at 200')),
    food('salt', pack('1 kg at 100')),
  ]);
  const { value } = costing(party(1, ['plain', 'pinched']), facts);
  expect(value.cost.total).toBe(401);
  const parts = value.ingredients.map(({ ingredient, cost, complete }) => [ingredient.key, cost, complete]);
  expect(parts).toEqual([
    ['rice', 400, true],
    ['salt', 1, false],
  ]);
});

// Salt to taste in one dish is in no quantity and no cost; the 10 g of the other are all there is, and complete.
test('by ingredient, what goes in to taste is not counted', () => {
  const facts = factsOf([
    dish('plain', '1 portion', ['10 g salt']),
    dish('tasted', '1 portion', ['taste salt']),
    food('salt', pack('1 kg at 100')),
  ]);
  const { value } = costing(party(1, ['plain', 'tasted']), facts);
  expect(value.cost.complete).toBe(true);
  const [salt] = value.ingredients;
  expect([salt!.prepared!.toString(), salt!.cost, salt!.complete]).toEqual(['10', 1, true]);
});

test('no guests cost nothing, and there is no cost of a guest', () => {
  const facts = factsOf([dish('rice-dish', '1 portion', ['1 kg rice']), food('rice', pack('1 kg at 200'))]);
  expect(cost(facts, 0, 'rice-dish')).toMatchObject({ total: 0, complete: true, aGuest: undefined });
});
