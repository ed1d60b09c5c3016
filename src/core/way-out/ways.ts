import { type Columns, type Held, matters, programFor, readServed } from './program.js';
import {
  aims,
  compareFigures,
  type Figures,
  figuresOf,
  type Puzzle,
  partsOf,
  type Served,
  type Way,
} from './puzzle.js';

/** Solves a program: the values of its columns, or undefined where nothing meets it. */
export type Solve = (program: string) => Columns | undefined;

type PartWay = { served: Served[]; open: number[]; figures: Figures };

/**
 * The best ways to meet every need, at most so many and best first: fewest dishes besides, then fewest portions whose
 * cost is not known, then least cost, then least work. Each is exact, and makes not all of the dishes of one before it.
 * None where some need cannot be met.
 */
export const smallestWays = (puzzle: Puzzle, solve: Solve, most = 3): Way[] => {
  const lists = partsOf(puzzle).map((part) => bestOf(puzzle, part, solve, most));
  if (lists.some((list) => list.length === 0)) return [];
  return picksOf(lists, most).map((picks) => {
    const chosen = picks.map((pick, at) => lists[at]![pick]!);
    const served = chosen.flatMap((way) => way.served).sort((a, b) => a.need - b.need || a.offer - b.offer);
    return {
      served,
      open: chosen.flatMap((way) => way.open).sort((a, b) => a - b),
      figures: figuresOf(puzzle, served),
    };
  });
};

/** The best ways of needs that nothing else shares, each with other dishes than those before it. */
const bestOf = (puzzle: Puzzle, part: readonly number[], solve: Solve, most: number): PartWay[] => {
  const found: PartWay[] = [];
  while (found.length < most) {
    const way = bestBut(
      puzzle,
      part,
      solve,
      found.map(({ open }) => open),
    );
    if (!way) break;
    found.push(way);
    if (way.open.length === 0) break;
  }
  return found;
};

/** Figure after figure: each is made least while those before it stay at their least. */
const bestBut = (
  puzzle: Puzzle,
  part: readonly number[],
  solve: Solve,
  barred: readonly number[][],
): PartWay | undefined => {
  const held: Held = { most: {}, barred };
  let best: PartWay | undefined;
  for (const aim of aims) {
    if (best && !matters(puzzle, part, aim)) continue;
    const columns = solve(programFor(puzzle, part, aim, held));
    if (!columns) break;
    const served = readServed(puzzle, part, columns);
    best = { served, open: openIn(puzzle, served), figures: figuresOf(puzzle, served) };
    held.most[aim] = best.figures[aim];
  }
  return best;
};

const openIn = ({ offers }: Puzzle, served: readonly Served[]): number[] =>
  [...new Set(served.map(({ offer }) => offer))]
    .filter((at) => offers[at]!.extra === 1)
    .sort((a, b) => a - b);

/** Which way of each part to take: the best of all first, then those that turn to another in the fewest figures. */
const picksOf = (lists: readonly PartWay[][], most: number): number[][] => {
  const first = lists.map(() => 0);
  let found: number[][] = [first];
  for (let turn = 1; turn < most; turn++) {
    const known = new Set(found.map((picks) => picks.join()));
    const turned = found.flatMap((picks) => picks.map((pick, at) => picks.with(at, pick + 1)));
    for (const picks of turned)
      if (picks.every((pick, at) => pick < lists[at]!.length) && !known.has(picks.join())) {
        known.add(picks.join());
        found.push(picks);
      }
  }
  const sums = new Map(found.map((picks) => [picks, sumOf(picks.map((pick, at) => lists[at]![pick]!))]));
  found = found.sort((a, b) => compareFigures(sums.get(a)!, sums.get(b)!));
  return found.slice(0, most);
};

const sumOf = (ways: readonly PartWay[]): Figures => {
  const sum: Figures = { extra: 0, unpriced: 0, cost: 0, work: 0 };
  for (const { figures } of ways) for (const aim of aims) sum[aim] += figures[aim];
  return sum;
};
