import { type Rational, together } from './quantity/rational.js';

// ISO 4217, List One of 2024-06-25. Not asked of Intl: there HUF or IQD have other digits, and they change with its
// version, which would turn every price kept into another.
const notTwo = {
  0: 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF',
  3: 'BHD IQD JOD KWD LYD OMR TND',
  4: 'CLF UYW',
};
const digits = new Map(
  Object.entries(notTwo).flatMap(([n, codes]) => codes.split(' ').map((code) => [code, Number(n)] as const)),
);

/** Minor digits of an ISO 4217 currency: 2 for GBP, 0 for JPY, 3 for KWD. */
export const minorDigits = (currency: string): number => digits.get(currency) ?? 2;

/** An exact sum in minor units rounded once to a whole unit, halves up. */
export const toMinor = (value: Rational): number => Number(value.round());

/**
 * Splits a whole total over parts in proportion to their exact shares so that the parts add up to it: each part
 * gets its share rounded down, and the units left go to the largest remainders, the first of equals first.
 */
export const allocate = (total: number, shares: readonly Rational[]): number[] =>
  allocateWhole(total, together(shares).ns);

/** The same over shares that are whole numbers. */
export const allocateWhole = (total: number, ns: readonly bigint[]): number[] => {
  const whole = ns.reduce((a, b) => a + b, 0n);
  if (whole === 0n) return ns.map(() => 0);
  const exact = ns.map((n) => n * BigInt(total));
  const parts = exact.map((n) => Number(n / whole));
  let left = total - parts.reduce((a, b) => a + b, 0);
  const order = exact
    .map((n, i) => ({ i, rest: n % whole }))
    .sort((a, b) => compare(b.rest, a.rest) || a.i - b.i);
  for (const { i } of order) {
    if (left <= 0) break;
    parts[i] = parts[i]! + 1;
    left--;
  }
  return parts;
};

const compare = (a: bigint, b: bigint): number => (a < b ? -1 : a > b ? 1 : 0);
