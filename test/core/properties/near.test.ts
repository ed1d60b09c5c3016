import fc from 'fast-check';
import { expect, test } from 'vitest';
import { exactFigure, minorOver, workOut } from '../../../src/core/kitchen-costs/figures.js';
import { minorNear } from '../../../src/core/kitchen-costs/near.js';
import { SumsWritten } from '../../../src/core/kitchen-costs/sums.js';
import { Rational } from '../../../src/core/quantity/rational.js';

/*
 * The float beside a cost only says which whole penny it rounds to, and only beyond doubt. Held here against plain
 * fractions on chance sums of several floors, on sums that come out at half a penny, and as near to one as can be.
 */

const whole = fc.oneof(fc.nat(1000), fc.nat(2 ** 31 - 1), fc.bigInt(0n, 10n ** 24n));
const below = fc.oneof(fc.integer({ min: 1, max: 60 }), fc.bigInt(1n, 10n ** 24n));
const figure = fc.tuple(whole, below).map(([n, d]) => Rational.of(n, d));
const floor = fc.array(fc.tuple(fc.nat(), figure), { minLength: 1, maxLength: 12 });
const floors = fc.array(floor, { minLength: 1, maxLength: 6 });

/** Given figures, then floor upon floor of sums of whatever came before. */
const built = (given: Rational[], above: [number, Rational][][]) => {
  const sums = new SumsWritten();
  const names = given.map((_, at) => sums.given(at));
  for (const parts of above) {
    for (const [pick, much] of parts) sums.part(names[pick % names.length]!, much);
    names.push(sums.sum(0));
  }
  const figures = workOut(
    sums.done(),
    given.map((value) => ({ value, marks: 0 })),
  );
  return { figures, places: names.map((name) => sums.placeOf(name)) };
};

const roundsAlike = (value: Rational, rounded: number) => expect(rounded).toBe(Number(value.round()));

test('a float is off by no more than is said of it, and rounds as its fraction does', () => {
  const u = Rational.of(1n, 2n ** 53n);
  fc.assert(
    fc.property(fc.array(figure, { minLength: 1, maxLength: 5 }), floors, (given, above) => {
      const { figures, places } = built(given, above);
      for (const at of places) {
        const value = exactFigure(figures, at);
        roundsAlike(value, minorOver(figures, at, Rational.one, 1));
        const near = figures.near[at]!;
        if (Number.isNaN(near)) continue;
        const off = ofFloat(near).minus(value);
        const bound = value.times(Rational.of(Math.ceil(figures.off[at]!) + 1)).times(u);
        expect((off.sign < 0 ? off.negated() : off).compare(bound)).toBeLessThanOrEqual(0);
      }
    }),
    { numRuns: 500 },
  );
});

/** The very fraction a float stands for. */
const ofFloat = (value: number): Rational => {
  let exponent = 0n;
  let mantissa = value;
  while (!Number.isInteger(mantissa)) {
    mantissa *= 2;
    exponent += 1n;
  }
  return Rational.of(BigInt(mantissa), 2n ** exponent);
};

const tiny = fc.tuple(fc.constantFrom(-1n, 0n, 1n), fc.integer({ min: 3, max: 40 }));

test('at half a penny, and a hair below and above, the fraction decides', () => {
  fc.assert(
    fc.property(
      fc.nat(10 ** 7),
      tiny,
      fc.array(figure, { maxLength: 9 }),
      fc.nat(30),
      (pennies, hair, parts, over) => {
        const [side, places] = hair;
        const divisor = Rational.of(over + 1);
        const edge = Rational.of(2 * pennies + 1, 2).plus(Rational.of(side, 10n ** BigInt(places)));
        // Shares that add up to the edge: each a part of what is left.
        let left = edge.times(divisor);
        const shares = parts.map((part) => {
          const share = left.times(part.over(part.plus(Rational.one)));
          left = left.minus(share);
          return share;
        });
        const { figures, places: all } = built([Rational.one], [[...shares, left].map((one) => [0, one])]);
        const at = all.at(-1)!;
        expect(exactFigure(figures, at).over(divisor).equals(edge)).toBe(true);
        roundsAlike(edge, minorOver(figures, at, divisor, over + 1));
      },
    ),
    { numRuns: 2000 },
  );
});

test('a float answers nearly always by itself, and never at half a penny', () => {
  expect(minorNear(62.3, 60)).toBe(62);
  expect([minorNear(62.5, 0), minorNear(62.5 - 1e-14, 60), minorNear(Number.NaN, 1)]).toEqual(
    Array(3).fill(undefined),
  );
  expect(minorNear(62.5 - 1e-10, 60)).toBe(62);
});
