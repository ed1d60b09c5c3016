import type { Rational } from '../quantity/rational.js';
import { nearest } from './near.js';

/** What a figure carries up into every sum it is part of: a part that isn't known, a price that is a guess. */
export const open = 1;
export const guess = 2;

/**
 * Figures in one line: first those given, then sums of so much of earlier ones; none refers to a later one, so once
 * from first to last works all of them out.
 */
export type Sums = {
  size: number;
  /** How many are given. */
  given: number;
  /** The parts of figure `at` stand from starts[at] to before starts[at + 1]; a given one has none. */
  starts: Int32Array;
  parts: Int32Array;
  /** How much of each part, exact and as the nearest float. */
  much: readonly Rational[];
  near: Float64Array;
  /** What a sum is marked with whatever its parts. */
  marks: Uint8Array;
  /** The sums that each figure is part of stand from userStarts[at] to before userStarts[at + 1]. */
  userStarts: Int32Array;
  users: Int32Array;
};

/** Writes sums down one after another, the parts of each before it; figures that are given whenever one is met. */
export class SumsWritten {
  private givens = 0;
  private readonly starts = [0];
  private readonly marks: number[] = [];
  private readonly much: Rational[];
  private parts: Int32Array;
  private count = 0;

  /** Room for about so many parts is made beforehand. */
  constructor(room = 1024) {
    this.much = new Array<Rational>(room);
    this.parts = new Int32Array(room);
  }

  /** The name, below 0, of the figure given at a place: sums come after all that is given, however much that will be. */
  given(place: number): number {
    if (place >= this.givens) this.givens = place + 1;
    return -1 - place;
  }

  /** So much of a figure written before goes into the sum that is written next. */
  part(of: number, much: Rational): void {
    if (this.count === this.parts.length) {
      const more = new Int32Array(this.count * 2);
      more.set(this.parts);
      this.parts = more;
    }
    this.parts[this.count] = of;
    this.much[this.count] = much;
    this.count += 1;
  }

  /** The sum of the parts since the last one, by a name to use it under in others. */
  sum(mark: number): number {
    this.starts.push(this.count);
    return this.marks.push(mark) - 1;
  }

  /** The place of a figure, by its name, once all are written. */
  placeOf(name: number): number {
    return name < 0 ? -1 - name : this.givens + name;
  }

  done(): Sums {
    const { givens, much } = this;
    much.length = this.count;
    const size = givens + this.marks.length;
    const parts = new Int32Array(much.length);
    const near = new Float64Array(much.length);
    for (let at = 0; at < near.length; at += 1) {
      parts[at] = this.placeOf(this.parts[at]!);
      near[at] = nearest(much[at]!);
    }
    const starts = new Int32Array(size + 1);
    starts.set(this.starts, givens);
    const marks = new Uint8Array(size);
    marks.set(this.marks, givens);
    return { size, given: givens, starts, parts, much, near, marks, ...usersOf(starts, parts) };
  }
}

const usersOf = (starts: Int32Array, parts: Int32Array): Pick<Sums, 'userStarts' | 'users'> => {
  const userStarts = new Int32Array(starts.length);
  for (let at = 0; at < parts.length; at += 1) userStarts[parts[at]! + 1]! += 1;
  for (let at = 1; at < userStarts.length; at += 1) userStarts[at]! += userStarts[at - 1]!;
  const next = userStarts.slice();
  const users = new Int32Array(parts.length);
  for (let sum = 0; sum + 1 < starts.length; sum += 1)
    for (let at = starts[sum]!; at < starts[sum + 1]!; at += 1) users[next[parts[at]!]!++] = sum;
  return { userStarts, users };
};

/** Figures and all that is worked out from them (`up`) or that they are worked out from, in the order of the sums. */
export const reach = (sums: Sums, from: Iterable<number>, up: boolean): number[] => {
  const starts = up ? sums.userStarts : sums.starts;
  const next = up ? sums.users : sums.parts;
  const seen = new Uint8Array(sums.size);
  const found: number[] = [];
  const meet = (at: number) => {
    if (seen[at] === 1) return;
    seen[at] = 1;
    found.push(at);
  };
  for (const at of from) meet(at);
  for (let i = 0; i < found.length; i += 1)
    for (let at = starts[found[i]!]!; at < starts[found[i]! + 1]!; at += 1) meet(next[at]!);
  return found.sort((a, b) => a - b);
};
