import { expect, test } from 'vitest';
import type { Event } from '../../../src/core/facts/event.js';
import { Rational } from '../../../src/core/quantity/rational.js';
import { wholeCost } from '../../../src/core/whole-cost/cost-of-party.js';
import { type WhatIf, whatIf } from '../../../src/core/whole-cost/what-if.js';
import { dish, factsOf, food, pack, party } from '../small.js';

// A portion is 100 g of leek at 5.00 a kilo, and 50 g of cheese: 1.05 a 100 g pack, or 9.00 a kilo from the market.
const small = { key: 'small', size: { amount: '100', unit: 'g' }, preferred: true };
const large = { key: 'large', size: { amount: '1', unit: 'kg' }, supplier: 'Market' };
const paid = (price: number, date = '2026-01-05') => ({ key: `p${price}`, date, price });
const facts = factsOf([
  dish('soup', '10 portions, 1 kg', ['1000 g leek']),
  dish('toast', '10 portions, 500 g', ['500 g cheese']),
  food('leek', pack('1 kg at 500')),
  food('cheese', {
    packs: [
      { ...small, prices: [paid(90, '2026-01-01'), paid(105)] },
      { ...large, prices: [paid(900)] },
    ],
  }),
]);
const supper = (): Event => party(20, ['soup', 'toast']);
const cost = (change: WhatIf, view: 'used' | 'bought' = 'used') => {
  const there = whatIf(supper(), facts, change);
  return wholeCost(there.event, there.facts, view).exact.toString();
};

test('nothing asked changes nothing, and what names nothing there neither', () => {
  expect(cost({})).toBe('2050');
  expect(cost({ without: { course: 'main', dish: 'no-dish' } })).toBe('2050');
  expect(cost({ pack: { ingredient: 'cheese', pack: 'no-pack' } })).toBe('2050');
  expect(cost({ dearer: { ingredient: 'salt', percent: Rational.of(10) } })).toBe('2050');
});

test('another head-count, a dish less, another portion', () => {
  expect(cost({ guests: 30 })).toBe('3075');
  expect(cost({ without: { course: 'main', dish: 'd1' } })).toBe('1000');
  expect(cost({ portion: { course: 'main', dish: 'd0', portion: { amount: '150', unit: 'g' } } })).toBe(
    '2550',
  );
});

// 105 and 8 per cent is 113.4, so 113: ten packs. Ten per cent less is 94.5, so 95. The older price stays as it was.
test('a price up or down goes to a whole penny, and only the price that stands', () => {
  expect(cost({ dearer: { ingredient: 'cheese', percent: Rational.of(8) } })).toBe('2130');
  expect(cost({ dearer: { ingredient: 'cheese', percent: Rational.of(-10) } })).toBe('1950');
  const there = whatIf(supper(), facts, { dearer: { ingredient: 'cheese', percent: Rational.of(8) } });
  expect(there.facts.ingredients.get('cheese')!.packs[0]!.prices.map(({ price }) => price)).toEqual([
    90, 113,
  ]);
});

test('another pack: a kilo at nine pounds, whole when it is bought', () => {
  const market = { pack: { ingredient: 'cheese', pack: 'large' } };
  expect([cost(market), cost(market, 'bought')]).toEqual(['1900', '1900']);
  const fewer = { ...market, guests: 10 };
  expect([cost(fewer), cost(fewer, 'bought')]).toEqual(['950', '1400']);
});

test('all of it together, and the event and facts asked about stay as they are', () => {
  const event = supper();
  const before = JSON.stringify([event, [...facts.ingredients]]);
  const change: WhatIf = {
    guests: 10,
    pack: { ingredient: 'cheese', pack: 'large' },
    dearer: { ingredient: 'cheese', percent: Rational.of(10) },
    without: { course: 'main', dish: 'd0' },
    portion: { course: 'main', dish: 'd1', portion: { amount: '100', unit: 'g' } },
  };
  const there = whatIf(event, facts, change);
  // A kilo at 9.90.
  expect(wholeCost(there.event, there.facts, 'used').exact.toString()).toBe('990');
  expect(JSON.stringify([event, [...facts.ingredients]])).toBe(before);
});
