import { expect, test } from 'vitest';
import { wholeCost } from '../../../src/core/whole-cost/cost-of-party.js';
import { dish, factsOf, food, pack, party } from '../small.js';

// Dittmer and Keefe, Principles of Food, Beverage and Labor Cost Controls, example 6.3, read in a copy: of a loin of
// 12 lb for 79.80, by-products of 6.10 and 6.90 are credited: 66.80 for 6 lb usable are 11.13 a pound, 5 oz 3.48; without
// the credit 13.30. By-products are no fact of their own here: the credit is taken off in the price of the pack.
test('a butcher test: 11.13 a usable pound where by-products are taken off the price, 13.30 where not', () => {
  const cost = (price: number, text: string) =>
    wholeCost(
      party(1, ['plate']),
      factsOf([
        dish('plate', '1 portion', [text]),
        food('loin', { edibleYield: { yield: '6/12' }, ...pack(`12 lb at ${price}`) }),
      ]),
      'used',
    ).total;
  const net = 7980 - 610 - 690;
  expect([net, cost(net, '6 lb loin')]).toEqual([6680, 6680]);
  expect([cost(net, '1 lb loin'), cost(net, '5 oz loin'), cost(7980, '1 lb loin')]).toEqual([
    1113, 348, 1330,
  ]);
});

// Worked example of an edible-portion cost: striploin at 11.95 a kilo, of which 4.6 of 5.2 kg are left, in 85 steaks of
// 170 g: 13.5087 a kilo × 14.45 kg = 195.20; were the yield first rounded to 88.5 %, 195.12. Bought are 16.33 kg: 17.
test('85 steaks: the yield is not rounded before it is used; bought are whole kilos', () => {
  const facts = (edible: string) =>
    factsOf([
      dish('steak', '1 portion', ['170 g striploin']),
      food('striploin', { edibleYield: { yield: edible }, ...pack('1 kg at 1195') }),
    ]);
  const exact = facts('23/26');
  expect(wholeCost(party(85, ['steak']), exact, 'used').total).toBe(19_520);
  expect(wholeCost(party(85, ['steak']), facts('0.885'), 'used').total).toBe(19_512);
  const { food: bought } = wholeCost(party(85, ['steak']), exact, 'bought');
  expect(bought.packs.map(({ need, packs, cost }) => [need.toFixed(2), packs, cost])).toEqual([
    ['16.33', 17, 17 * 1195],
  ]);
});

// The worked example of the prime cost method, food with the hands that make it: 5.19 + 5.00 = 10.19, × 2 = 20.38.
test('food of 5.19 and hands of 5.00 are a prime cost of 10.19, and twice that is 20.38', () => {
  const facts = factsOf([
    dish('plate', '1 portion', ['1 each plateful']),
    food('plateful', pack('1 each at 519')),
  ]);
  const hands = { key: 'hands', name: 'Hands', kind: 'hands', by: { rate: 1500, hours: '1/3' } };
  const { food: ofFood, parts, total } = wholeCost(party(1, ['plate'], { costs: [hands] }), facts, 'used');
  expect([ofFood.cost, parts[0]!.cost, total, 2 * total]).toEqual([519, 500, 1019, 2038]);
});
