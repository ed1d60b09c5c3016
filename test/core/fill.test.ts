import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Eaters, fill } from '../../src/core/fill.js';

const one = (guests: number, ...bins: number[]): Eaters => ({
  guests,
  from: bins.map((bin) => ({ bin, cost: 0 })),
});

// 6 vegans can eat the pie alone, 2 vegetarians the pie or the gratin. The pie is made for 6: the vegetarians move on.
test('who can eat something else leaves the portions to those who cannot', () => {
  const { given, without, shortages } = fill([one(2, 0, 1), one(6, 0)], [6, 2]);
  expect(given).toEqual([[0, 2], [6]]);
  expect(without).toEqual([0, 0]);
  expect(shortages).toEqual([]);
});

// The pie is made for 6 and 8 need it: 2 go without. Who eats from another dish has nothing to do with it.
test('where portions do not reach, all who compete for them are named', () => {
  const { without, shortages } = fill([one(3, 0), one(5, 0, 1), one(1, 2)], [6, 0, 1]);
  expect(without[0]! + without[1]!).toBe(2);
  expect(shortages).toEqual([{ eaters: [0, 1], bins: [0, 1], guests: 8, portions: 6 }]);
});

type Best = { fed: number; cost: number };

/** Every way to give each guest one portion or none: the most fed, and the least cost among those. */
const byTrying = (eaters: readonly Eaters[], bins: readonly number[]): Best => {
  const heads = eaters.flatMap(({ guests, from }) => Array.from({ length: guests }, () => from));
  let best: Best = { fed: 0, cost: 0 };
  const tryFrom = (at: number, left: readonly number[], { fed, cost }: Best) => {
    const from = heads[at];
    if (!from) {
      if (fed > best.fed || (fed === best.fed && cost < best.cost)) best = { fed, cost };
      return;
    }
    tryFrom(at + 1, left, { fed, cost });
    for (const { bin, cost: more } of from)
      if (left[bin]! > 0)
        tryFrom(
          at + 1,
          left.map((n, i) => (i === bin ? n - 1 : n)),
          { fed: fed + 1, cost: cost + more },
        );
  };
  tryFrom(0, bins, best);
  return best;
};

const anyCase = fc.array(fc.nat(3), { minLength: 1, maxLength: 3 }).chain((bins) =>
  fc.record({
    bins: fc.constant(bins),
    eaters: fc.array(
      fc.record({
        guests: fc.integer({ min: 1, max: 2 }),
        from: fc
          .subarray(bins.map((_, bin) => bin))
          .chain((some) =>
            fc.tuple(...some.map((bin) => fc.record({ bin: fc.constant(bin), cost: fc.nat(2) }))),
          ),
      }),
      { maxLength: 3 },
    ),
  }),
);

test('as many are fed, and at as little cost, as by trying every way', () => {
  fc.assert(
    fc.property(anyCase, ({ eaters, bins }) => {
      const { given, without, shortages } = fill(eaters, bins);
      const taken = bins.map(() => 0);
      let cost = 0;
      for (const [e, { guests, from }] of eaters.entries()) {
        expect(given[e]!.reduce((a, b) => a + b, 0) + without[e]!).toBe(guests);
        for (const [at, one] of from.entries()) {
          expect(given[e]![at]).toBeGreaterThanOrEqual(0);
          taken[one.bin]! += given[e]![at]!;
          cost += given[e]![at]! * one.cost;
        }
      }
      for (const [bin, size] of bins.entries()) expect(taken[bin]).toBeLessThanOrEqual(size);
      const fed = taken.reduce((a, b) => a + b, 0);
      expect({ fed, cost }).toEqual(byTrying(eaters, bins));
      const hungry = without.reduce((a, b) => a + b, 0);
      expect(shortages.reduce((n, short) => n + short.guests - short.portions, 0)).toBe(hungry);
      for (const short of shortages)
        for (const e of short.eaters)
          for (const { bin } of eaters[e]!.from) expect(short.bins).toContain(bin);
    }),
    { numRuns: 3000 },
  );
});
