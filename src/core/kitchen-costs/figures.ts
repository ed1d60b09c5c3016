import { Rational, sum } from '../quantity/rational.js';
import { minorNear, nearest, offNearest, trusted } from './near.js';
import { reach, type Sums } from './sums.js';

/** A given figure: exact, undefined when not known, with its marks. */
export type Given = { value: Rational | undefined; marks: number };

/** All figures of some sums worked out from those that are given. */
export type Figures = {
  sums: Sums;
  given: readonly Given[];
  near: Float64Array;
  /** How far the float may be off, in the units of `near.ts`. */
  off: Float64Array;
  marks: Uint8Array;
  /** The exact figures that were asked for. */
  exact: Map<number, Rational>;
};

/** Every figure from what is given. */
export const workOut = (sums: Sums, given: readonly Given[]): Figures => {
  const { size } = sums;
  const near = new Float64Array(size);
  const figures = { near, off: new Float64Array(size), marks: new Uint8Array(size) };
  const all: Figures = { sums, given, ...figures, exact: new Map() };
  for (let at = 0; at < size; at += 1) settle(all, at);
  return all;
};

/** The figures after some given ones changed; those before stay as they are. */
export const workOutAgain = (before: Figures, changed: ReadonlyMap<number, Given>): Figures => {
  const given = before.given.slice();
  for (const [at, one] of changed) given[at] = one;
  const figures: Figures = {
    sums: before.sums,
    given,
    near: before.near.slice(),
    off: before.off.slice(),
    marks: before.marks.slice(),
    exact: new Map(before.exact),
  };
  const moved = reach(before.sums, changed.keys(), true);
  for (const at of moved) {
    figures.exact.delete(at);
    settle(figures, at);
  }
  return figures;
};

const settle = (figures: Figures, at: number): void => {
  const given = figures.given[at];
  if (given) {
    figures.near[at] = given.value ? nearest(given.value) : 0;
    figures.off[at] = offNearest;
    figures.marks[at] = given.marks;
    return;
  }
  const { sums, near, off, marks } = figures;
  const end = sums.starts[at + 1]!;
  let total = 0;
  let worst = 0;
  let mark = sums.marks[at]!;
  for (let i = sums.starts[at]!; i < end; i += 1) {
    const part = sums.parts[i]!;
    total += sums.near[i]! * near[part]!;
    if (off[part]! > worst) worst = off[part]!;
    mark |= marks[part]!;
  }
  near[at] = trusted(total);
  off[at] = worst + offNearest + 1 + end - sums.starts[at]!;
  marks[at] = mark;
};

/** A figure exactly; what isn't known counts nothing. */
export const exactFigure = (figures: Figures, at: number): Rational => {
  const { sums, given, exact } = figures;
  const known = exact.get(at);
  if (known) return known;
  for (const one of reach(sums, [at], false)) {
    if (exact.has(one)) continue;
    const of = given[one];
    exact.set(one, of ? (of.value ?? Rational.zero) : exactSum(figures, one));
  }
  return exact.get(at)!;
};

const exactSum = ({ sums, exact }: Figures, at: number): Rational => {
  const parts: Rational[] = [];
  for (let i = sums.starts[at]!; i < sums.starts[at + 1]!; i += 1)
    parts.push(exact.get(sums.parts[i]!)!.times(sums.much[i]!));
  return sum(parts);
};

/** A figure over a divisor in whole minor units, rounded once, halves up; the float where it can tell, else exactly. */
export const minorOver = (figures: Figures, at: number, divisor: Rational, near: number): number =>
  minorNear(figures.near[at]! / near, figures.off[at]! + offNearest + 1) ??
  Number(exactFigure(figures, at).over(divisor).round());

/** The places of all figures that may differ between two workings of the same sums: those that turn on what differs. */
export const differing = (before: Figures, after: Figures): number[] => {
  const changed: number[] = [];
  for (const [at, one] of after.given.entries()) if (before.given[at] !== one) changed.push(at);
  return reach(after.sums, changed, true);
};
