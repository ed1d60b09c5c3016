/** A whole number: plain up to 2^53, big beyond. */
export type Int = number | bigint;

/** The greatest common divisor of two whole numbers, not both zero; never below 1. */
export const gcd = (a: number, b: number): number => {
  let x = a;
  let y = b;
  while (y !== 0) {
    const rest = x % y;
    x = y;
    y = rest;
  }
  return x || 1;
};

const safe = BigInt(Number.MAX_SAFE_INTEGER);

export const bigGcd = (a: bigint, b: bigint): bigint => {
  let x = a;
  let y = b;
  while (y > safe) {
    const rest = x % y;
    x = y;
    y = rest;
  }
  return y === 0n ? x || 1n : BigInt(gcd(Number(y), Number(x % y)));
};

export const shrink = (value: bigint): Int => (value <= safe && value >= -safe ? Number(value) : value);

const size = (value: Int): Int => (value < 0 ? -value : value);

/** The greatest common divisor of whole numbers of either kind, of either sign, not both zero. */
export const common = (a: Int, b: Int): bigint => {
  const [x, y] = typeof a === 'number' && a !== 0 ? [b, a] : [a, b];
  if (typeof y !== 'number' || y === 0) return bigGcd(BigInt(size(x)), BigInt(size(y)));
  // What is left of a large figure after a small one is small again, and small figures are quick.
  const rest = typeof x === 'number' ? x % y : Number(x % BigInt(y));
  return BigInt(gcd(Math.abs(y), Math.abs(rest)));
};

export const leastMultiple = (a: bigint, b: Int): bigint => (b === 1 ? a : (a / common(a, b)) * BigInt(b));
