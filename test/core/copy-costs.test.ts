import { expect, test } from 'vitest';
import { startingWith } from '../../src/core/copy-costs.js';
import type { CostLine } from '../../src/core/facts/cost-line.js';
import { event } from '../../src/core/facts/event.js';
import { kitchen } from '../../src/core/facts/kitchen.js';

const line = (name: string): CostLine => ({
  key: 'c1',
  name,
  kind: 'other',
  by: { fixed: 500 },
  note: '',
});
const house = kitchen.parse({
  name: 'Kitchen',
  currency: 'GBP',
  timeZone: 'Europe/London',
  costs: [line('Usual')],
  roundTo: 50,
});
const party = (more: object) =>
  event.parse({
    key: 'party',
    name: 'Party',
    date: '2026-12-04',
    place: 'home',
    groups: [
      { key: 'adults', name: 'Adults', guests: 10 },
      { key: 'kids', name: 'Children', guests: 4 },
    ],
    ...more,
  });
const fresh = party({ groups: [{ key: 'children', name: 'children', guests: 3 }] });

test('a new event starts with the kitchen’s usual costs and rounding, and they are its own from then on', () => {
  const { costs, price } = startingWith(undefined, fresh, house);
  expect(costs).toEqual([line('Usual')]);
  expect(costs[0]).not.toBe(house.costs[0]);
  expect([price.by, price.roundTo]).toEqual([null, 50]);
});

test('a copy keeps costs and price rule of its event, groups found by name; its total and discount stay behind', () => {
  const from = party({
    costs: [line('Own')],
    price: {
      by: { aGuest: 2600 },
      roundTo: 100,
      groups: [
        { group: 'kids', pays: { percent: '50' } },
        { group: 'adults', pays: { aGuest: 1 } },
      ],
      minimum: 30_000,
      discount: { percent: '10' },
      discountFor: 'friends',
    },
  });
  const { costs, price } = startingWith(from, fresh, house);
  expect(costs).toEqual([line('Own')]);
  expect(price).toEqual({
    by: { aGuest: 2600 },
    roundTo: 100,
    groups: [{ group: 'children', pays: { percent: '50' } }],
    minimum: 30_000,
    discount: null,
    discountFor: '',
  });
  const byTotal = party({ price: { by: { total: 90_000 } } });
  expect(startingWith(byTotal, fresh, house)).toMatchObject({ costs: [line('Usual')], price: { by: null } });
});
