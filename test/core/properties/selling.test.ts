import fc from 'fast-check';
import { expect, test } from 'vitest';
import { taxRoundings } from '../../../src/core/facts/price.js';
import { exact } from '../../../src/core/quantity/amount.js';
import { Rational } from '../../../src/core/quantity/rational.js';
import { marginOf, priceForMargin } from '../../../src/core/selling/price.js';
import { type Costed, selling } from '../../../src/core/selling/selling.js';
import { groups, kitchenOf, priced } from '../selling/sold.js';

const added = (parts: readonly number[]) => parts.reduce((all, part) => all + part, 0);
const percents = (most: number) => fc.integer({ min: 0, max: most * 100 }).map((n) => `${n}/100`);

const anyTax = fc.option(
  fc.record({
    name: fc.constant('Tax'),
    rate: fc.constantFrom('20', '19', '7.7', '5', '100/3', '0'),
    included: fc.boolean(),
    rounding: fc.constantFrom(...taxRoundings),
  }),
  { nil: null },
);
const anyPays = fc.oneof(
  percents(100).map((percent) => ({ percent })),
  fc.nat(3000).map((aGuest) => ({ aGuest })),
);
const anyDiscount = fc.option(
  fc.oneof(
    percents(60).map((percent) => ({ percent })),
    fc.nat(20_000).map((off) => ({ off })),
  ),
  { nil: null },
);
const anyWays = fc.record({
  roundTo: fc.constantFrom(0, 1, 5, 50, 100),
  minimum: fc.option(fc.nat(200_000), { nil: null }),
  discount: anyDiscount,
  groups: fc
    .record({ children: anyPays, helpers: anyPays })
    .map((one) => Object.entries(one).map(([group, pays]) => ({ group, pays }))),
});
const anyHeads = fc
  .tuple(fc.integer({ min: 1, max: 120 }), fc.nat(40), fc.nat(5))
  .map((all) => groups(...all));
const anyCost = fc
  .tuple(fc.integer({ min: 1, max: 900_000_000 }), fc.integer({ min: 1, max: 999 }))
  .map(([n, d]) => Rational.of(n, d));
const costed = (cost: Rational): Costed => ({
  exact: cost,
  complete: true,
  food: { exact: cost, complete: true },
});
const anyBy = fc.oneof(
  percents(90).map((margin) => ({ margin })),
  fc.integer({ min: 10, max: 100 }).map((n) => ({ foodCost: `${n}` })),
  fc.nat(9000).map((aGuest) => ({ aGuest })),
  fc.nat(900_000).map((total) => ({ total })),
);

test('rows, minimum, discount, net and tax add up, and nothing is below zero', () => {
  fc.assert(
    fc.property(anyBy, anyWays, anyHeads, anyCost, anyTax, (by, ways, heads, cost, tax) => {
      const sold = selling(priced(0, { by, ...ways }, heads), costed(cost), kitchenOf({ tax }));
      const { rows, gross, minimum, discount, net, total } = sold;
      expect(added(rows.map(({ amount }) => amount))).toBe(gross);
      for (const { each, guests, amount } of rows) if (each !== undefined) expect(amount).toBe(each * guests);
      const named = gross + minimum - discount;
      expect(tax?.included ? total : net).toBe(named);
      expect(net + sold.tax).toBe(total);
      expect(Math.min(...rows.map(({ amount }) => amount), net, sold.tax, discount)).toBeGreaterThanOrEqual(
        0,
      );
      if (rows.length && ways.minimum) expect(gross + minimum).toBeGreaterThanOrEqual(ways.minimum);
      if ('total' in by && rows.length) expect(gross).toBe(by.total);
    }),
    { numRuns: 1000 },
  );
});

test('before rounding a price leaves exactly the margin asked', () => {
  fc.assert(
    fc.property(anyCost, percents(99), (cost, margin) => {
      const price = priceForMargin(cost, margin)!;
      expect(price.minus(cost).over(price).times(Rational.of(100)).equals(exact(margin))).toBe(true);
    }),
  );
});

test('a price from a margin leaves at least that, and one step less would not', () => {
  fc.assert(
    fc.property(percents(90), anyWays, anyHeads, anyCost, anyTax, (margin, ways, heads, cost, tax) => {
      const at = (by: object) =>
        selling(priced(0, { by, ...ways, minimum: null }, heads), costed(cost), kitchenOf({ tax }));
      const step = Math.max(1, ways.roundTo);
      const { aGuest, net } = at({ margin });
      if (aGuest === undefined) throw new Error('adults pay in full, so there is a price');
      expect(aGuest % step).toBe(0);
      if (net > 0) expect(marginOf(cost, net)!.compare(exact(margin))).toBeGreaterThanOrEqual(0);
      if (aGuest >= step) {
        const less = marginOf(cost, at({ aGuest: aGuest - step }).net);
        expect(less === undefined || less.compare(exact(margin)) < 0).toBe(true);
      }
      expect(at({ aGuest })).toMatchObject({ net, aGuest });
    }),
    { numRuns: 1000 },
  );
});

test('a price rises with the cost and with the margin', () => {
  fc.assert(
    fc.property(
      percents(90),
      percents(90),
      anyWays,
      anyHeads,
      anyCost,
      anyCost,
      anyTax,
      (a, b, ways, heads, c, d, tax) => {
        const price = (margin: string, cost: Rational) =>
          selling(priced(0, { by: { margin }, ...ways }, heads), costed(cost), kitchenOf({ tax })).aGuest!;
        const [low, high] = c.compare(d) < 0 ? [c, d] : [d, c];
        expect(price(a, low)).toBeLessThanOrEqual(price(a, high));
        const [less, more] = exact(a).compare(exact(b)) < 0 ? [a, b] : [b, a];
        expect(price(less, c)).toBeLessThanOrEqual(price(more, c));
      },
    ),
    { numRuns: 500 },
  );
});

test('the price named for the floor reaches it, and a minor unit less does not', () => {
  fc.assert(
    fc.property(anyBy, anyWays, anyHeads, anyCost, anyTax, (by, ways, heads, cost, tax) => {
      const at = (set: object) =>
        selling(
          priced(0, { ...ways, minimum: null, by: set }, heads),
          costed(cost),
          kitchenOf({ tax, marginFloor: '30' }),
        );
      const { floor } = at(by);
      const set = 'total' in by ? floor?.total : floor?.aGuest;
      if (set === undefined) throw new Error('somebody pays in full, so there is a price');
      const named = (price: number) => at('total' in by ? { total: price } : { aGuest: price });
      if (named(set).rows.length) expect(named(set).floor?.short).toBe(0);
      if (set > 0 && named(set - 1).rows.length) expect(named(set - 1).floor?.short).toBeGreaterThan(0);
    }),
    { numRuns: 500 },
  );
});
