import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Event } from '../../../src/core/facts/event.js';
import { byKey, type Facts } from '../../../src/core/facts/facts.js';
import { Rational, sum } from '../../../src/core/quantity/rational.js';
import { wholeCost } from '../../../src/core/whole-cost/cost-of-party.js';
import type { CostView, WholeCost } from '../../../src/core/whole-cost/whole-cost.js';
import { anyCostLines } from '../../arbitraries/costs.js';
import { anyKitchen, type Kitchen } from '../kitchens.js';

const views: CostView[] = ['used', 'bought'];
const added = (parts: readonly number[]) => parts.reduce((all, part) => all + part, 0);
// Past this a total is no whole number of pennies a computer keeps exactly.
const payable = (...costs: WholeCost[]) =>
  costs.every(
    ({ total, food }) => total + added(food.packs.map((one) => one.receipt)) < Number.MAX_SAFE_INTEGER,
  );

const anyParties: fc.Arbitrary<Kitchen> = fc
  .tuple(anyKitchen, anyCostLines, anyCostLines, anyCostLines)
  .map(([{ facts, events }, ...costs]) => ({
    facts,
    events: events.map((event, at) => ({ ...event, costs: costs[at]! })),
  }));

test('food, dishes and parts add up to the total, to the penny and exactly, in either view', () => {
  fc.assert(
    fc.property(anyParties, ({ facts, events }) => {
      for (const view of views) {
        const cost = wholeCost(events[0]!, facts, view, events);
        const { food, parts, exact, total } = cost;
        const all = [food.exact, ...parts.map((part) => part.exact ?? Rational.zero)];
        expect(sum(all).equals(exact)).toBe(true);
        expect(sum(food.dishes.map((dish) => dish.exact)).equals(food.exact)).toBe(true);
        if (!payable(cost)) continue;
        expect(food.cost + added(parts.map((part) => part.cost))).toBe(total);
        expect(added(food.dishes.map((dish) => dish.cost))).toBe(food.dishes.length > 0 ? food.cost : 0);
        for (const [i, one] of all.entries()) {
          const off = Rational.of([food.cost, ...parts.map((part) => part.cost)][i]!).minus(one);
          expect(Math.abs(off.toNumber())).toBeLessThanOrEqual(1);
        }
      }
    }),
    { numRuns: 150 },
  );
});

test('what is used costs no more than whole packs of it, for the same event alone', () => {
  fc.assert(
    fc.property(anyParties, ({ facts, events }) => {
      for (const event of events) {
        const [used, bought] = [wholeCost(event, facts, 'used'), wholeCost(event, facts, 'bought')];
        if (!payable(bought)) continue;
        expect(used.food.exact.compare(bought.food.exact)).toBeLessThanOrEqual(0);
        expect(used.exact.compare(bought.exact)).toBeLessThanOrEqual(0);
        expect(used.complete).toBe(bought.complete);
      }
    }),
    { numRuns: 150 },
  );
});

test('the shares of events that buy together add up to the receipt of fewest whole packs', () => {
  fc.assert(
    fc.property(anyKitchen, ({ facts, events }) => {
      const costs = events.map((event) => wholeCost(event, facts, 'bought', events));
      const alone = events.map((event) => wholeCost(event, facts, 'bought'));
      if (!payable(...costs, ...alone)) return;
      const packs = costs.flatMap(({ food }) => food.packs);
      for (const { ingredient } of packs) {
        const shares = packs.filter((one) => one.ingredient === ingredient);
        const { receipt, packs: together, each } = shares[0]!;
        const need = sum(shares.map((one) => one.need));
        expect(shares.map((one) => [one.receipt, one.packs])).toEqual(shares.map(() => [receipt, together]));
        expect(receipt).toBe(together * each);
        expect(together).toBe(Number(need.ceil()));
        if (!need.isZero) expect(added(shares.map((one) => one.cost))).toBe(receipt);
      }
      // Bought together is never dearer than bought apart.
      const sums = [costs, alone].map((list) => sum(list.map(({ food }) => food.exact)));
      expect(sums[0]!.compare(sums[1]!)).toBeLessThanOrEqual(0);
    }),
    { numRuns: 150 },
  );
});

/** A kitchen whose first ingredient that is bought lost its prices, and a party whose costs aren't known. */
const unpriced = (facts: Facts): Facts => ({
  ...facts,
  ingredients: byKey(
    [...facts.ingredients.values()].map((one) => ({
      ...one,
      packs: one.packs.map((pack) => ({ ...pack, prices: [] })),
    })),
  ),
});

test('without its prices an event that buys anything is not complete, and what is known of it costs no more', () => {
  fc.assert(
    fc.property(anyParties, ({ facts, events }) => {
      for (const event of events)
        for (const view of views) {
          const [known, less] = [wholeCost(event, facts, view), wholeCost(event, unpriced(facts), view)];
          expect(less.exact.compare(known.exact)).toBeLessThanOrEqual(0);
          expect(less.food.exact.isZero).toBe(true);
          if (!known.food.exact.isZero) expect(less.complete).toBe(false);
          if (!known.complete) expect(less.complete).toBe(false);
        }
    }),
    { numRuns: 100 },
  );
});

test('one more cost that is not known leaves the total what it was, not complete, and is named', () => {
  const asked = { key: 'x', name: 'Asked for', kind: 'other', note: '' } as const;
  fc.assert(
    fc.property(anyParties, ({ facts, events }) => {
      const [event] = events;
      for (const by of [{ fixed: null }, { aGuest: null }, { step: null, holds: 9, each: '1', spare: '0' }]) {
        const more: Event = { ...event!, costs: [...event!.costs, { ...asked, by }] };
        const [before, after] = [wholeCost(event!, facts, 'used'), wholeCost(more, facts, 'used')];
        expect([after.complete, after.total]).toEqual([false, before.total]);
        expect(after.problems.map(({ sentence }) => sentence)).toContain(
          'Asked for: what it costs is not known.',
        );
      }
    }),
    { numRuns: 50 },
  );
});

test('what leaves a whole cost open is always said: complete is when nothing is asked for', () => {
  fc.assert(
    fc.property(anyParties, ({ facts, events }) => {
      for (const view of views) {
        const { complete, problems } = wholeCost(events[0]!, facts, view);
        if (!complete) expect(problems.filter(({ weight }) => weight !== 'check')).not.toEqual([]);
        else expect(problems.filter(({ weight }) => weight !== 'check')).toEqual([]);
      }
    }),
    { numRuns: 150 },
  );
});
