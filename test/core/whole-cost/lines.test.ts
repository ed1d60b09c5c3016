import { expect, test } from 'vitest';
import type { CostLine } from '../../../src/core/facts/cost-line.js';
import type { Event } from '../../../src/core/facts/event.js';
import type { Facts } from '../../../src/core/facts/facts.js';
import { startingCosts, wholeCost } from '../../../src/core/whole-cost/cost-of-party.js';
import { dish, factsOf, food, pack, party } from '../small.js';

/** Costs in the order given, each named as it is keyed. */
const costs = (lines: Record<string, object>) => ({
  costs: Object.entries(lines).map(([key, by]) => ({ key, name: key, kind: 'other', by })),
});

const people = {
  people: [
    { key: 'ana', name: 'Ana', hourlyCost: 1500 },
    { key: 'ben', name: 'Ben', hourlyCost: null },
  ],
};

/** A soup of 1 kg leeks for four, at 2.40 a kilo: 0.60 a guest. */
const kitchen = factsOf(
  [dish('soup', '4 portions', ['1 kg leek']), food('leek', pack('1 kg at 240'))],
  people,
);
const soupFor = (guests: number, lines: Record<string, object>) => party(guests, ['soup'], costs(lines));
const used = (event: Event, facts: Facts = kitchen) => wholeCost(event, facts, 'used');
const parts = (event: Event, facts?: Facts) =>
  Object.fromEntries(used(event, facts).parts.map((part) => [part.line.key, part]));

// 40 guests: leeks 10 kg at 2.40 = 24.00. The hall 60.00. Napkins 40 × 0.15 = 6.00. Glasses: 2 each and 5 % to spare
// are 84, 36 to a crate: 3 crates at 7.50 = 22.50. Insurance a tenth of the food, 2.40. Of all that, 114.90, 5 % are
// 5.745. In all 120.645, shown as 120.65, 3.02 a guest; of the parts 5.745 has the half that rounds up.
test('fixed, a guest, by steps, and per cent of the food and of all before', () => {
  const cost = used(
    soupFor(40, {
      hall: { fixed: 6000 },
      napkins: { aGuest: 15 },
      glasses: { step: 750, holds: 36, each: '2', spare: '5' },
      insurance: { percent: '10', of: 'food' },
      contingency: { percent: '5', of: 'costs' },
    }),
  );
  expect(cost.parts.map((part) => part.exact!.toString())).toEqual(['6000', '600', '2250', '240', '574.5']);
  expect(cost.parts.map((part) => part.steps)).toEqual([undefined, undefined, 3, undefined, undefined]);
  expect([cost.food.cost, ...cost.parts.map((part) => part.cost)]).toEqual([2400, 6000, 600, 2250, 240, 575]);
  expect([cost.exact.toString(), cost.total, cost.aGuest]).toEqual(['12064.5', 12065, 302]);
  expect([cost.complete, cost.problems]).toEqual([true, []]);
});

// Two servers at least, one for every 15 guests begun: 40 need 3, 45 too, 46 need 4; each 5½ hours at 12.00.
test('people: so many at least, or one for every so many guests begun', () => {
  const serving = { rate: 1200, hours: '5.5', people: 2, guestsEach: 15 };
  const at = (guests: number) => parts(soupFor(guests, { serving })).serving!;
  expect([10, 30, 31, 40, 45, 46].map((guests) => at(guests).people)).toEqual([2, 2, 3, 3, 3, 4]);
  expect([at(40).hours!.toString(), at(40).cost]).toEqual(['16.5', 19_800]);
  expect(at(46).cost - at(45).cost).toBe(6600);
});

test('an hour costs what its line says, else what its person does, else it is not known', () => {
  const hours = '2';
  const cost = used(
    soupFor(4, {
      own: { rate: 1000, person: 'ana', hours },
      ana: { rate: null, person: 'ana', hours },
      ben: { rate: null, person: 'ben', hours },
      gone: { rate: null, person: 'cleo', hours },
      nobody: { rate: null, hours },
    }),
  );
  expect(cost.parts.map((part) => part.exact?.toString())).toEqual([
    '2000',
    '3000',
    undefined,
    undefined,
    undefined,
  ]);
  expect(cost.parts.map((part) => part.complete)).toEqual([true, true, false, false, false]);
  expect(cost.problems.map(({ code, sentence }) => [code, sentence])).toEqual([
    ['no-rate', 'ben: what an hour of Ben costs is not known.'],
    ['no-rate', 'gone: what an hour costs is not known.'],
    ['no-rate', 'nobody: what an hour costs is not known.'],
  ]);
  expect([cost.complete, cost.total]).toEqual([false, 240 + 5000]);
});

test('a sum that is not known is named, never free, and leaves what is a share of it open', () => {
  const cost = used(
    soupFor(4, {
      hall: { fixed: null },
      bread: { aGuest: null },
      crates: { step: null, holds: 20 },
      'of-food': { percent: '10', of: 'food' },
      'of-all': { percent: '10', of: 'costs' },
    }),
  );
  expect(cost.parts.map((part) => part.exact?.toString())).toEqual([
    undefined,
    undefined,
    undefined,
    '24',
    '26.4',
  ]);
  expect(cost.parts.map((part) => part.complete)).toEqual([false, false, false, true, false]);
  expect(cost.problems.map(({ sentence }) => sentence)).toEqual([
    'hall: what it costs is not known.',
    'bread: what it costs is not known.',
    'crates: what it costs is not known.',
  ]);
  expect([cost.complete, cost.parts[2]!.steps]).toEqual([false, 1]);
});

test('without guests there is nothing to cook or hire by the guest, and no cost of a guest', () => {
  const cost = used(
    soupFor(0, {
      hall: { fixed: 6000 },
      glasses: { step: 750, holds: 36 },
      serving: { rate: 1200, hours: '5', people: 0, guestsEach: 15 },
      cooking: { rate: 1200, hours: 'cooking' },
    }),
  );
  expect([cost.total, cost.aGuest, cost.food.exact.isZero, cost.complete]).toEqual([
    6000,
    undefined,
    true,
    true,
  ]);
  expect(wholeCost(soupFor(0, {}), kitchen, 'bought')).toMatchObject({ total: 0, complete: true });
});

test("a new event starts with the kitchen's usual costs, its own from then on", () => {
  const usual = costs({ hall: { fixed: 6000 } }).costs as CostLine[];
  const { kitchen: own } = factsOf([], { costs: usual });
  const started = startingCosts(own);
  expect(started).toEqual(own.costs);
  started[0]!.name = 'The barn';
  expect(own.costs[0]!.name).toBe('hall');
});
