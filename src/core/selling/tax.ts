import type { Tax } from '../facts/price.js';

/** What a paper comes to, in minor units: `named` as prices are named, then without tax, the tax, and with it. */
export type Taxed = { net: number; tax: number; total: number };

/** `lines`: the amounts of a paper's lines as prices are named; `discount`: what is taken off all of them. */
export const taxOf = (_lines: readonly number[], _tax: Tax | null, _discount = 0): Taxed => {
  throw new Error('not worked out yet');
};
