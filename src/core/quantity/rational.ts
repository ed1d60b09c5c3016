import { bigGcd, common, gcd, type Int, leastMultiple, shrink } from './divisors.js';

/**
 * Exact fractions. Figures stay small in a kitchen, so numerator and denominator are plain integers while
 * products stay under 2^53 and big integers beyond; both paths give the same reduced fraction.
 */
const SMALL = 94_906_265; // the largest integer whose square stays below 2^53

export class Rational {
  private constructor(
    readonly n: Int,
    readonly d: Int,
  ) {}

  static readonly zero = new Rational(0, 1);
  static readonly one = new Rational(1, 1);

  /** The reduced fraction n/d of two integers; the sign stands on the numerator. d = 0 throws. */
  static of(n: Int, d: Int = 1): Rational {
    if (
      typeof n === 'number' &&
      typeof d === 'number' &&
      Number.isSafeInteger(n) &&
      Number.isSafeInteger(d)
    ) {
      if (d === 0) throw new RangeError('a fraction has no zero below the line');
      if (d === 1) return new Rational(n, 1);
      const g = gcd(Math.abs(n), Math.abs(d)) * (d < 0 ? -1 : 1);
      return new Rational(n / g || 0, d / g);
    }
    return Rational.big(BigInt(n), BigInt(d));
  }

  private static big(n: bigint, d: bigint): Rational {
    if (d === 0n) throw new RangeError('a fraction has no zero below the line');
    let g = bigGcd(n < 0n ? -n : n, d < 0n ? -d : d);
    if (d < 0n) g = -g;
    return new Rational(shrink(n / g), shrink(d / g));
  }

  /** n/d × m/e of fractions that are reduced: what they have in common across is soon found where one of them is small. */
  private static product(n: Int, d: Int, m: Int, e: Int): Rational {
    const [g, h] = [common(n, e), common(m, d)];
    return new Rational(shrink((BigInt(n) / g) * (BigInt(m) / h)), shrink((BigInt(d) / h) * (BigInt(e) / g)));
  }

  /** Reads "12", "0.75", "-3" or "3/4" exactly; anything else throws. Ways cooks write are read by `readAmount`. */
  static parse(text: string): Rational {
    const slash = text.indexOf('/');
    if (slash > 0) return Rational.of(integer(text.slice(0, slash)), integer(text.slice(slash + 1)));
    const dot = text.indexOf('.');
    if (dot < 0) return Rational.of(integer(text), 1);
    const places = text.length - dot - 1;
    return Rational.of(integer(text.slice(0, dot) + text.slice(dot + 1)), 10n ** BigInt(places));
  }

  plus(o: Rational): Rational {
    if (o.n === 0) return this;
    if (this.n === 0) return o;
    if (small(this, o))
      return Rational.of(num(this.n) * num(o.d) + num(o.n) * num(this.d), num(this.d) * num(o.d));
    const n = BigInt(this.n) * BigInt(o.d) + BigInt(o.n) * BigInt(this.d);
    // A whole number more leaves a fraction reduced.
    if (o.d === 1) return new Rational(shrink(n), this.d);
    if (this.d === 1) return new Rational(shrink(n), o.d);
    return Rational.big(n, BigInt(this.d) * BigInt(o.d));
  }

  minus(o: Rational): Rational {
    return this.plus(o.negated());
  }

  times(o: Rational): Rational {
    if (o.isOne) return this;
    if (this.isOne) return o;
    if (small(this, o)) return Rational.of(num(this.n) * num(o.n), num(this.d) * num(o.d));
    return Rational.product(this.n, this.d, o.n, o.d);
  }

  over(o: Rational): Rational {
    if (o.isOne) return this;
    if (small(this, o)) return Rational.of(num(this.n) * num(o.d), num(this.d) * num(o.n));
    if (o.n === 0) throw new RangeError('a fraction has no zero below the line');
    return o.n < 0
      ? Rational.product(this.n, this.d, -o.d, -o.n)
      : Rational.product(this.n, this.d, o.d, o.n);
  }

  negated(): Rational {
    return new Rational(typeof this.n === 'number' ? -this.n || 0 : -this.n, this.d);
  }

  /** Below, at or above zero as -1, 0 or 1. */
  get sign(): -1 | 0 | 1 {
    return this.n < 0 ? -1 : this.n > 0 ? 1 : 0;
  }

  get isZero(): boolean {
    return this.n === 0;
  }

  get isOne(): boolean {
    return this.n === 1 && this.d === 1;
  }

  get isWhole(): boolean {
    return this.d === 1;
  }

  compare(o: Rational): -1 | 0 | 1 {
    const [here, there] = small(this, o)
      ? [num(this.n) * num(o.d), num(o.n) * num(this.d)]
      : [BigInt(this.n) * BigInt(o.d), BigInt(o.n) * BigInt(this.d)];
    return here < there ? -1 : here > there ? 1 : 0;
  }

  equals(o: Rational): boolean {
    return this.n === o.n && this.d === o.d;
  }

  /** The largest whole number not above this. */
  floor(): bigint {
    if (typeof this.n === 'number' && typeof this.d === 'number') {
      const rest = this.n % this.d;
      return BigInt((this.n - rest) / this.d - (rest < 0 ? 1 : 0));
    }
    const n = BigInt(this.n);
    const d = BigInt(this.d);
    const q = n / d;
    return n < 0n && q * d !== n ? q - 1n : q;
  }

  /** The smallest whole number not below this. */
  ceil(): bigint {
    return -this.negated().floor();
  }

  /** The same as `ceil`, to go on reckoning with. */
  roundedUp(): Rational {
    if (typeof this.n !== 'number' || typeof this.d !== 'number') return Rational.of(this.ceil());
    const rest = this.n % this.d;
    return new Rational((this.n - rest) / this.d + (rest > 0 ? 1 : 0) || 0, 1);
  }

  /** The nearest whole number, halves away from zero. */
  round(): bigint {
    if (this.sign < 0) return -this.negated().round();
    const d = BigInt(this.d);
    return (2n * BigInt(this.n) + d) / (2n * d);
  }

  /** The nearest float, for drawing only; never goes back into a figure. */
  toNumber(): number {
    return Number(this.n) / Number(this.d);
  }

  /** A decimal with exactly `places` digits after the point, the last one rounded half away from zero. */
  toFixed(places: number): string {
    const scaled = this.times(Rational.of(10n ** BigInt(places))).round();
    const digits = (scaled < 0n ? -scaled : scaled).toString().padStart(places + 1, '0');
    const sign = scaled < 0n ? '-' : '';
    return places === 0 ? sign + digits : `${sign}${digits.slice(0, -places)}.${digits.slice(-places)}`;
  }

  /** Exact text: a decimal where one ends, else the reduced "n/d". `parse` reads it back unchanged. */
  toString(): string {
    if (this.d === 1) return this.n.toString();
    let d = BigInt(this.d);
    let twos = 0;
    let fives = 0;
    while (d % 2n === 0n) {
      d /= 2n;
      twos++;
    }
    while (d % 5n === 0n) {
      d /= 5n;
      fives++;
    }
    return d === 1n ? this.toFixed(Math.max(twos, fives)) : `${this.n}/${this.d}`;
  }

  toJSON(): string {
    return this.toString();
  }
}

/** Fractions over one common denominator, so that many can be summed or compared as whole numbers; none reduced. */
export const together = (parts: readonly Rational[]): { ns: bigint[]; d: bigint } => {
  let d = 1n;
  for (const part of new Set(parts.map((one) => one.d))) d = leastMultiple(d, part);
  return { ns: parts.map((part) => BigInt(part.n) * (d / BigInt(part.d))), d };
};

/** The exact sum of fractions; none gives zero. */
export const sum = (parts: Iterable<Rational>): Rational => {
  const { ns, d } = together([...parts]);
  let n = 0n;
  for (const one of ns) n += one;
  return Rational.of(n, d);
};

const num = (value: Int) => value as number;

const small = (a: Rational, b: Rational) => within(a.n) && within(a.d) && within(b.n) && within(b.d);
// Sums of two products stay below 2^53 only when each product stays below 2^52.
const within = (value: Int) => typeof value === 'number' && value <= SMALL / 1.5 && value >= -SMALL / 1.5;

const integer = (text: string): Int => {
  if (!/^-?\d+$/.test(text)) throw new SyntaxError(`not a figure: ${text}`);
  return text.length < 16 ? Number(text) : BigInt(text);
};
