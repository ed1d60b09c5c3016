import fc from 'fast-check';
import { expect, test } from 'vitest';
import { taxRoundings } from '../../../src/core/facts/price.js';
import type { Offer } from '../../../src/core/facts/quote.js';
import { accountOf, duesOf } from '../../../src/core/quoting/dues.js';
import { offerComes } from '../../../src/core/quoting/offer-comes.js';
import { owedIfCancelled } from '../../../src/core/quoting/owed.js';
import { invoiceOf, receiptOf } from '../../../src/core/quoting/papers.js';
import { selling } from '../../../src/core/selling/selling.js';
import { wholeCost } from '../../../src/core/whole-cost/cost-of-party.js';
import { kitchenAt, paid, quoteOf, supper } from '../quoting/quoted.js';
import { groups, vat } from '../selling/sold.js';

const added = (parts: readonly number[]) => parts.reduce((all, part) => all + part, 0);

const anyDay = fc.integer({ min: 1, max: 28 }).map((day) => `2026-11-${String(day).padStart(2, '0')}`);
const anyDue = fc.record({
  words: fc.constant('part'),
  percent: fc.option(fc.constantFrom('25', '100/3', '12.5', '60', '0'), { nil: null }),
  date: fc.option(anyDay, { nil: null }),
});
const { offer: plain } = quoteOf(supper(), kitchenAt(2500));
const anyOffer: fc.Arbitrary<Offer> = fc.array(anyDue, { maxLength: 6 }).map((dues) => ({ ...plain, dues }));

test('dues add up to the total, none before it was accepted, in order of their days', () => {
  fc.assert(
    fc.property(anyOffer, fc.nat(10_000_000), anyDay, (offer, total, accepted) => {
      const dues = duesOf(offer, total, accepted);
      expect(added(dues.map(({ amount }) => amount))).toBe(total);
      const dates = dues.map(({ date }) => date!);
      expect(dates.every((date) => date >= accepted)).toBe(true);
      expect(dates).toEqual([...dates].sort());
    }),
  );
});

test('what is open of the dues is what is owed, never below zero', () => {
  const anyPaid = fc.array(
    fc
      .tuple(anyDay, fc.integer({ min: 1, max: 90_000 }), fc.boolean())
      .map(([day, sum, back]) => paid(day, sum, { back })),
    { maxLength: 8 },
  );
  fc.assert(
    fc.property(anyOffer, fc.nat(200_000), anyPaid, (offer, total, payments) => {
      const {
        paid: sum,
        owed,
        dues,
      } = accountOf(total, duesOf(offer, total, '2026-11-01'), payments, '2026-11-20');
      expect(owed).toBe(total - sum);
      expect(added(dues.map(({ open }) => open))).toBe(Math.min(total, Math.max(0, owed)));
    }),
  );
});

test('called off later, no less is owed', () => {
  const anySteps = fc.array(
    fc.record({ days: fc.nat(60), percent: fc.constantFrom('10', '25', '50', '100') }),
  );
  fc.assert(
    fc.property(anySteps, anyDay, anyDay, (steps, a, b) => {
      const [early, late] = a < b ? [a, b] : [b, a];
      // Terms that ask for less the later it is are the cook's own; those that rise, as terms do, are never undercut.
      const rising = steps
        .sort((x, y) => y.days - x.days)
        .filter(({ percent }, at, all) =>
          all.slice(0, at).every((before) => Number(before.percent) <= Number(percent)),
        );
      const owed = (day: string) =>
        owedIfCancelled({ ...plain, terms: { ...plain.terms, cancellation: rising } }, 119_600, day).owed;
      if (rising.length) expect(owed(early)!).toBeLessThanOrEqual(owed(late)!);
      else expect(owed(late)).toBeUndefined();
    }),
  );
});

const anyPrice = fc.record({
  by: fc.oneof(
    fc.nat(5000).map((aGuest) => ({ aGuest })),
    fc.nat(300_000).map((total) => ({ total })),
    fc.constantFrom('0', '30', '66.6').map((margin) => ({ margin })),
  ),
  minimum: fc.option(fc.nat(100_000), { nil: null }),
  discount: fc.option(fc.constantFrom({ percent: '12.5' }, { off: 999 }, { off: 900_000 }), { nil: null }),
  groups: fc.constantFrom(
    [],
    [{ group: 'children', pays: { percent: '33.3' } }],
    [{ group: 'children', pays: { aGuest: 777 } }],
  ),
});
const anyHeads = fc.tuple(fc.integer({ min: 1, max: 90 }), fc.nat(20)).map(([a, c]) => groups(a, c));
const anyTax = fc.option(
  fc.record({ included: fc.boolean(), rounding: fc.constantFrom(...taxRoundings) }).map(vat),
  { nil: {} },
);

test('an offer comes to what the event is sold at, and its invoice and receipts to the same', () => {
  fc.assert(
    fc.property(anyPrice, anyHeads, anyTax, fc.integer({ min: 1, max: 9 }), (price, heads, tax, share) => {
      const facts = kitchenAt(2500, tax);
      const event = supper(0, { price, ...heads });
      const sold = selling(event, wholeCost(event, facts, 'used'), facts.kitchen);
      const quote = quoteOf(event, facts);
      const { lines, ...comes } = offerComes(quote.offer.options[0]!, quote.offer);
      const { gross, minimum, discount, net, total } = sold;
      expect(comes).toEqual({ gross, minimum, discount, net, tax: sold.tax, total });
      const invoice = invoiceOf(quote, [], { number: 1, date: '2026-10-01' });
      const sum = added(invoice.lines.map(({ amount }) => amount));
      expect(invoice.tax && !invoice.tax.included ? sum + invoice.taxAmount : sum).toBe(invoice.total);
      expect(invoice.total).toBe(total);
      const first = Math.floor((total * share) / 10);
      const all = [first, total - first]
        .filter((part) => part > 0)
        .map((part, i) => paid(`2026-10-0${i + 1}`, part));
      const taxes = all.map((one) => receiptOf(quote, one, all, { number: 1, date: one.date }).taxAmount);
      if (all.length) expect(added(taxes)).toBe(sold.tax);
      expect(lines.every(({ amount, count, each }) => amount === count * each)).toBe(true);
    }),
    { numRuns: 300 },
  );
});
