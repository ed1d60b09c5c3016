import fc from 'fast-check';
import { expect, test } from 'vitest';
import { costOfEvent } from '../../../src/core/costing.js';
import { costShares } from '../../../src/core/sheets/cost-shares.js';
import { costing, costingSheet } from '../../../src/core/sheets/costing.js';
import { dish, factsOf, food, pack, party } from '../small.js';

const facts = factsOf([
  dish('soup', '3 portions', ['100 g leek']),
  dish('pie', '7 portions', ['100 g beef', '1 g saffron']),
  food('leek', pack('300 g at 100')),
  food('beef', pack('1 kg at 1000', { guess: true })),
  food('saffron'),
]);
const meal = (adults: number) =>
  party(adults, [], {
    courses: [
      { key: 'a', name: 'Starter', time: '18:00', dishes: [{ key: 'd', recipe: 'soup' }] },
      { key: 'b', name: 'Main', time: '19:00', dishes: [{ key: 'd', recipe: 'pie' }] },
    ],
  });

// Ten eat: 10/3 of soup at 33.33p a batch is 111.11p, 10/7 of pie at 100p is 142.86p, together 253.97p; soup is 7/16
// of that, 43.75 per cent, and the tenth left over goes to the first of two equal remainders.
test('courses and dishes add up to what the event and a guest cost, to the penny', () => {
  const { value: cost } = costOfEvent(meal(10), facts);
  const shares = costShares(cost);
  expect(shares.map((share) => [share.from, share.cost, share.aGuest])).toEqual([
    [0, 111, 11],
    [111, 143, 14],
  ]);
  expect([cost.total, cost.aGuest]).toEqual([254, 25]);
  expect(shares.map(({ complete }) => complete)).toEqual([true, false]);
  const dishes = shares.flatMap((share) => share.dishes);
  expect(dishes.map(({ aPortion }) => aPortion)).toEqual([11, 14]);
  expect(dishes.map(({ share }) => share.toFixed(1))).toEqual(['43.8', '56.2']);
});

test('whatever the number of guests, the parts come to the whole', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 400 }), (adults) => {
      const { value: cost } = costOfEvent(meal(adults), facts);
      const shares = costShares(cost);
      const sum = (parts: number[]) => parts.reduce((a, b) => a + b, 0);
      expect(sum(shares.map((share) => share.cost))).toBe(cost.total);
      expect(sum(shares.map((share) => share.aGuest!))).toBe(cost.aGuest);
      const tenths = shares.flatMap(({ dishes }) => dishes.map(({ share }) => Number(share.toFixed(1)) * 10));
      expect(Math.round(sum(tenths))).toBe(1000);
    }),
  );
});

test('the sheet says at which pack and price, whether it is a guess, and leaves what is not known empty', () => {
  const rows = costingSheet(costing(meal(10), facts)).tables.find(({ name }) => name === 'ingredients')!.rows;
  const of = (name: string) => rows.find(({ ingredient }) => ingredient === name);
  expect(of('Beef')).toMatchObject({
    pack: '1',
    packUnit: 'kg',
    price: '10.00',
    priceDate: '2026-01-05',
    guess: 'yes',
  });
  expect(of('Saffron')).toMatchObject({ pack: '', price: '', cost: '', complete: 'no' });
});

test('no guests cost nothing a guest', () => {
  const shares = costShares(costOfEvent(meal(0), facts).value);
  expect(shares.map(({ aGuest, dishes }) => [aGuest, dishes[0]!.aPortion])).toEqual([
    [undefined, undefined],
    [undefined, undefined],
  ]);
});
