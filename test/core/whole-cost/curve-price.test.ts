import { expect, test } from 'vitest';
import type { Event } from '../../../src/core/facts/event.js';
import { curveOf } from '../../../src/core/whole-cost/curve.js';
import { breakEven, cheapestNear, heldPrice, pricedAt } from '../../../src/core/whole-cost/curve-price.js';
import { dish, factsOf, food, pack, party } from '../small.js';

// Leeks at 50p a guest, and 60.00 for every server, one for each 20 guests begun.
const facts = factsOf([dish('soup', '10 portions', ['1000 g leek']), food('leek', pack('1 kg at 500'))], {
  marginFloor: '30',
});
const serving = { key: 's', name: 'Serving', kind: 'hands', by: { rate: 1500, hours: '4', guestsEach: 20 } };
const supper = (by: object | null, more: object = {}): Event =>
  party(40, ['soup'], { costs: [serving], price: { by }, ...more });
const points = (event: Event, to: number) => curveOf(event, facts, 'used', { from: 1, to }).points;

// At 4.00 a guest 3.50 is left over the food: 18 pay one server, 35 two, 52 three.
test('break-even is where the price covers the cost from then on, so it moves behind each further server', () => {
  const event = supper({ aGuest: 400 });
  const even = (to: number) => {
    const all = points(event, to);
    return breakEven(all, pricedAt(all, event.price, facts.kitchen));
  };
  expect([even(20), even(40), even(60)]).toEqual([18, 35, 52]);
  expect([even(17), even(30), even(41)]).toEqual([undefined, undefined, undefined]);
});

test('a cost that is not all known breaks even nowhere', () => {
  const event = supper({ aGuest: 400 }, { costs: [{ ...serving, by: { ...serving.by, rate: null } }] });
  const all = points(event, 40);
  expect(breakEven(all, pricedAt(all, event.price, facts.kitchen))).toBeUndefined();
});

// At 40 two servers are full: 0.50 + 3.00 a guest. The 52nd guest costs 0.50 + 3.46.
test('the cheapest head-count nearby is the last before a step', () => {
  const all = points(supper(null), 60);
  const near = cheapestNear(all, 42, 10)!;
  expect([near.guests, near.aGuest]).toEqual([40, 350]);
  expect(cheapestNear(all, 42, 1)!.guests).toBe(43);
  expect(cheapestNear([], 42, 10)).toBeUndefined();
});

test('a price that follows from the margin is held as it comes out for the guests there are', () => {
  const now = points(supper(null), 40).at(-1)!;
  const held = (by: object | null) => heldPrice(supper(by), now, facts.kitchen)?.by;
  // 140.00 for 40 guests at 30 per cent: 200.00 in all, 5.00 each.
  expect(held({ margin: '30' })).toEqual({ aGuest: 500 });
  expect([held({ aGuest: 410 }), held({ total: 9000 }), held(null)]).toEqual([
    { aGuest: 410 },
    { total: 9000 },
    undefined,
  ]);
});

test('what keeps the margin is seven tenths of what the guests bring', () => {
  const event = supper({ aGuest: 500 });
  const all = points(event, 41);
  const priced = pricedAt(all, event.price, facts.kitchen);
  expect(priced.slice(-2).map(({ net, keeps }) => [net.toString(), keeps!.toString()])).toEqual([
    ['20000', '14000'],
    ['20500', '14350'],
  ]);
  expect(priced[39]!.margin!.toString()).toBe('30');
});
