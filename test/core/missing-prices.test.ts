import { describe, expect, test } from 'vitest';
import { costOfEvent } from '../../src/core/costing.js';
import type { Facts } from '../../src/core/facts/facts.js';
import { dish, factsOf, food, pack, party } from './small.js';

const cost = (facts: Facts, guests: number, ...dishes: string[]) => {
  const { value, problems } = costOfEvent(party(guests, dishes), facts);
  return { ...value, said: problems.map(({ sentence }) => sentence) };
};

describe('a price that is missing is never nothing', () => {
  const saffron = (more: object) =>
    factsOf([
      dish('rice', '10 portions', ['1 kg rice', '1 g saffron']),
      food('rice', pack('1 kg at 200')),
      food('saffron', more),
    ]);

  test('no pack, or a pack without a price: the total is incomplete and says so', () => {
    for (const more of [{}, pack('1 g')])
      expect(cost(saffron(more), 10, 'rice')).toMatchObject({
        total: 200,
        complete: false,
        said: ['No price for Saffron.'],
      });
  });

  test('two packs and none preferred', () => {
    const size = { amount: '1', unit: 'g' };
    const prices = [{ key: 'paid', date: '2026-01-05', price: 500 }];
    const packs = ['a', 'b'].map((key) => ({ key, size, prices }));
    expect(cost(saffron({ packs }), 10, 'rice')).toMatchObject({
      complete: false,
      said: ['Saffron: several packs and none preferred, so no price stands.'],
    });
  });

  test('a pack of nothing has no price for anything', () => {
    expect(cost(saffron(pack('0 g at 500')), 10, 'rice')).toMatchObject({ total: 200, complete: false });
  });

  test('a guess is a price, and shows as one', () => {
    expect(cost(saffron(pack('1 g at 500', { guess: true })), 10, 'rice')).toMatchObject({
      total: 700,
      complete: true,
      said: ['The price of Saffron is a guess of 5 Jan 2026.'],
    });
  });

  test('three components deep it still leaves the event incomplete', () => {
    const facts = factsOf([
      dish('pie', '1 portion', ['1 portion @filling']),
      dish('filling', '1 portion', ['1 portion @sauce']),
      dish('sauce', '1 portion', ['1 g saffron']),
      food('saffron'),
    ]);
    expect(cost(facts, 10, 'pie')).toMatchObject({
      total: 0,
      complete: false,
      said: ['No price for Saffron.'],
    });
  });

  test('a recipe without lines costs an unknown amount, not nothing', () => {
    expect(cost(factsOf([dish('cake', '1 portion', [])]), 10, 'cake')).toMatchObject({
      total: 0,
      complete: false,
      said: ['Cake has no lines, so what is in it and what it costs are not known.'],
    });
  });

  test('a yield that is not known leaves what to buy open, and so the cost', () => {
    const { complete, said } = cost(saffron({ edibleYield: null, ...pack('1 g at 500') }), 10, 'rice');
    expect(complete).toBe(false);
    expect(said).toEqual(["Saffron: edible yield not known, so what to buy can't be worked out."]);
  });

  // What stands in the way is said the right way round: a pack in ml for a line in g, a pack in g for a line in ml.
  test('a pack in another measure, without a density', () => {
    const oil = (line: string, size: string) =>
      factsOf([dish('dip', '1 portion', [line]), food('oil', pack(`${size} at 500`))]);
    expect(cost(oil('10 g oil', '500 ml'), 1, 'dip').said).toEqual([
      "Oil: no density, so g can't be turned into ml.",
    ]);
    expect(cost(oil('10 ml oil', '500 g'), 1, 'dip').said).toContain(
      "Oil: no density, so ml can't be turned into weight.",
    );
  });

  test('a count whose edible yield is not known still has its price', () => {
    const weights = [{ unit: 'each', grams: '110', of: 'bought' }];
    const onion = food('onion', { edibleYield: null, weights, ...pack('3 each at 60') });
    const found = cost(factsOf([dish('dip', '1 portion', ['1 each onion']), onion]), 1, 'dip');
    expect([found.total, found.complete]).toEqual([20, true]);
    expect(found.said).toEqual([
      "Onion: edible yield not known, so its prepared weight can't be worked out.",
    ]);
  });
});
