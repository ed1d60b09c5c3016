import fc from 'fast-check';
import { type Afterwards, afterwards } from '../../src/core/facts/afterwards.js';
import { anyAmount, anyKey, anyMeasure, anyMoney, keptWords, maybe } from './words.js';

const some = <T>(row: fc.Arbitrary<T>) => fc.array(row, { maxLength: 3 });

export const anyAfterwards: fc.Arbitrary<Afterwards> = fc
  .record({
    came: some(fc.record({ group: anyKey, guests: fc.nat(300) })),
    bought: some(fc.record({ ingredient: anyKey, amount: maybe(anyMeasure), paid: maybe(anyMoney) })),
    spent: some(fc.record({ line: anyKey, hours: maybe(anyAmount), paid: maybe(anyMoney) })),
    left: some(fc.record({ dish: anyKey, portions: anyAmount })),
    note: keptWords(40),
  })
  .map((one) => afterwards.parse(one));
