import fc from 'fast-check';
import { type CostLine, costKinds, costLine, workHours } from '../../src/core/facts/cost-line.js';
import {
  type SellingPrice,
  sellingPrice,
  type Tax,
  tax,
  taxRoundings,
  terms,
} from '../../src/core/facts/price.js';
import { anyAmount, anyMoney, keptWords, keyed, maybe, title } from './words.js';

const heads = fc.integer({ min: 1, max: 300 });
const percent = fc.nat(100).map(String);
const half = fc.nat(50).map(String);

const anyBasis = fc.oneof(
  fc.record({ fixed: maybe(anyMoney) }),
  fc.record({ aGuest: maybe(anyMoney) }),
  fc.record({ step: maybe(anyMoney), holds: heads, each: anyAmount, spare: percent }),
  fc.record({
    rate: maybe(anyMoney),
    hours: fc.oneof(anyAmount, fc.constantFrom(...workHours)),
    people: fc.nat(9),
    guestsEach: maybe(heads),
  }),
  fc.record({ percent, of: fc.constantFrom('food', 'costs') }),
);

export const anyCostLines: fc.Arbitrary<CostLine[]> = keyed(
  4,
  fc.record({ name: title, kind: fc.constantFrom(...costKinds), by: anyBasis, note: keptWords(20) }),
).map((lines) => lines.map((line) => costLine.parse(line)));

export const anyTax: fc.Arbitrary<Tax> = fc
  .record({
    name: title,
    rate: percent,
    included: fc.boolean(),
    rounding: fc.constantFrom(...taxRoundings),
  })
  .map((one) => tax.parse(one));

export const anyDiscount = maybe(fc.oneof(fc.record({ percent }), fc.record({ off: anyMoney })));

export const anyPrice = (groups: readonly string[]): fc.Arbitrary<SellingPrice> =>
  fc
    .record({
      by: maybe(
        fc.oneof(
          fc.record({ aGuest: anyMoney }),
          fc.record({ total: anyMoney }),
          fc.record({ margin: percent }),
          fc.record({ foodCost: percent }),
        ),
      ),
      roundTo: fc.constantFrom(0, 5, 50, 100),
      groups: fc
        .subarray([...groups])
        .map((list) => list.map((group) => ({ group, pays: { percent: '50' } }))),
      minimum: maybe(anyMoney),
      discount: anyDiscount,
      discountFor: keptWords(20),
    })
    .map((one) => sellingPrice.parse(one));

export const anyTerms = fc
  .record({
    included: keptWords(40),
    allergies: keptWords(40),
    validDays: fc.integer({ min: 1, max: 60 }),
    finalCountDays: maybe(fc.nat(30)),
    instalments: fc.array(fc.record({ words: keptWords(20), percent: half, days: maybe(fc.nat(90)) }), {
      maxLength: 2,
    }),
    cancellation: fc.array(fc.record({ days: fc.nat(90), percent }), { maxLength: 2 }),
  })
  .map((one) => terms.parse(one));
