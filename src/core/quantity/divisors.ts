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
