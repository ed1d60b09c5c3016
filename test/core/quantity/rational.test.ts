import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { Rational, sum } from '../../../src/core/quantity/rational.js';

// The figures of a kitchen are small; those near the edges, where plain integers end and big ones begin, are sought out.
const edges = [63_270_843n, 94_906_265n, 2n ** 52n, 2n ** 53n, 10n ** 30n];
const anyInt = fc.oneof(
  fc.bigInt({ min: -2000n, max: 2000n }),
  fc.tuple(fc.constantFrom(...edges), fc.bigInt({ min: -3n, max: 3n })).map(([edge, off]) => edge + off),
  fc.bigInt({ min: -(10n ** 24n), max: 10n ** 24n }),
);
const anyPair = fc.tuple(
  anyInt,
  anyInt.filter((d) => d !== 0n),
);
const ours = ([n, d]: [bigint, bigint]) => Rational.of(n, d);
const theirs = ([n, d]: [bigint, bigint]) => new Fraction(n, d);
const same = (mine: Rational, other: Fraction) =>
  expect(`${mine.n}/${mine.d}`).toBe(`${other.s * other.n}/${other.d}`);

describe('against fraction.js', () => {
  test('plus, minus, times, over and compare', () => {
    fc.assert(
      fc.property(anyPair, anyPair, (a, b) => {
        same(ours(a).plus(ours(b)), theirs(a).add(theirs(b)));
        same(ours(a).minus(ours(b)), theirs(a).sub(theirs(b)));
        same(ours(a).times(ours(b)), theirs(a).mul(theirs(b)));
        if (b[0] !== 0n) same(ours(a).over(ours(b)), theirs(a).div(theirs(b)));
        expect(ours(a).compare(ours(b))).toBe(Math.sign(theirs(a).compare(theirs(b))));
        expect(ours(a).equals(ours(b))).toBe(theirs(a).equals(theirs(b)));
      }),
      { numRuns: 500 },
    );
  });

  test('a whole number more or less', () => {
    fc.assert(
      fc.property(anyPair, anyInt, (a, whole) => {
        same(ours(a).plus(Rational.of(whole)), theirs(a).add(new Fraction(whole)));
        same(Rational.of(whole).minus(ours(a)), new Fraction(whole).sub(theirs(a)));
      }),
      { numRuns: 500 },
    );
  });

  test('the nearest whole number, halves away from zero', () => {
    fc.assert(
      fc.property(anyPair, (a) => {
        const { s, n, d } = theirs(a);
        expect(ours(a).round()).toBe(s * ((2n * n + d) / (2n * d)));
      }),
    );
  });

  test('floor and ceil', () => {
    fc.assert(
      fc.property(anyPair, (a) => {
        expect(ours(a).floor()).toBe(theirs(a).floor().s * theirs(a).floor().n);
        expect(ours(a).ceil()).toBe(theirs(a).ceil().s * theirs(a).ceil().n);
      }),
    );
  });

  test('a sum of many, and the same sum in any order', () => {
    fc.assert(
      fc.property(fc.array(anyPair, { maxLength: 12 }), (list) => {
        same(
          sum(list.map(ours)),
          list.reduce((all, one) => all.add(theirs(one)), new Fraction(0)),
        );
        expect(sum(list.toReversed().map(ours)).equals(sum(list.map(ours)))).toBe(true);
      }),
    );
  });

  test('decimals as they are typed', () => {
    fc.assert(
      fc.property(fc.nat(), fc.nat(999_999_999), fc.integer({ min: 1, max: 9 }), (whole, part, places) => {
        const text = `${whole}.${String(part).slice(0, places)}`;
        same(Rational.parse(text), new Fraction(text));
      }),
    );
  });
});

test('what is added and taken away, multiplied and divided again, is what it was', () => {
  fc.assert(
    fc.property(anyPair, anyPair, (a, b) => {
      expect(ours(a).plus(ours(b)).minus(ours(b)).equals(ours(a))).toBe(true);
      if (b[0] !== 0n) expect(ours(a).times(ours(b)).over(ours(b)).equals(ours(a))).toBe(true);
    }),
  );
});

test('exact text reads back as the same figure', () => {
  fc.assert(
    fc.property(anyPair, (a) => {
      expect(Rational.parse(ours(a).toString()).equals(ours(a))).toBe(true);
      expect(JSON.stringify(ours(a))).toBe(`"${ours(a).toString()}"`);
    }),
  );
});

// Half a penny goes up, and half a penny owed goes down: 0.5 is 1, −0.5 is −1, 2.5 is 3.
test('rounds halves away from zero, to whole figures and to places', () => {
  const round = (text: string) => Rational.parse(text).round();
  expect(['0.5', '-0.5', '2.5', '2.4999', '-2.5', '7/3'].map(round)).toEqual([1n, -1n, 3n, 2n, -3n, 2n]);
  const fixed = (text: string, places: number) => Rational.parse(text).toFixed(places);
  expect([fixed('1.005', 2), fixed('-0.005', 2), fixed('2/3', 3), fixed('12', 2), fixed('0.5', 0)]).toEqual([
    '1.01',
    '-0.01',
    '0.667',
    '12.00',
    '1',
  ]);
});

test('a decimal where one ends, else the reduced fraction', () => {
  const said = ['3/4', '1/3', '10/4', '6/3', '-7/8', '1/1024'].map((text) => Rational.parse(text).toString());
  expect(said).toEqual(['0.75', '1/3', '2.5', '2', '-0.875', '0.0009765625']);
});

test('nothing below the line and words that are no figure throw', () => {
  expect(() => Rational.of(1, 0)).toThrow(RangeError);
  expect(() => Rational.one.over(Rational.zero)).toThrow(RangeError);
  for (const text of ['', 'a', '1.5/2', '1e3', '1,5', '½', '--1', ' 1'])
    expect(() => Rational.parse(text), text).toThrow(SyntaxError);
});
