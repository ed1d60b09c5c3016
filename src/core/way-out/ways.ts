import { byFewDishes } from './few.js';
import { withoutHopeless } from './hopeless.js';
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
 * The best ways to meet every need, at most so many, best first and each found when it is asked for: fewest dishes besides, then fewest
 * portions whose cost is not known, then least cost, then least work. Each is exact, and makes not all of the dishes of
 * one before it. None where some need cannot be met.
 */
export function* waysByFigures(whole: Puzzle, solve: Solve, most: number): Generator<Way> {
  const puzzle = withoutHopeless(whole, most);
  const lists = partsOf(puzzle).map((part) => new Best(puzzle, part, solve));
  const first = lists.map(() => 0);
  const open = [first];
  const known = new Set([first.join()]);
  for (let found = 0; found < most && open.length > 0; found++) {
    const sums = open.map((picks) => sumOf(picks, lists));
    const at = sums.reduce((best, sum, i) => (compareSums(sum, sums[best]) < 0 ? i : best), 0);
    if (!sums[at]) return;
    const [picks = first] = open.splice(at, 1);
    yield together(puzzle, picks, lists);
    for (const next of picks.map((pick, i) => picks.with(i, pick + 1)))
      if (!known.has(next.join())) {
        known.add(next.join());
        open.push(next);
      }
  }
}

/** The best ways of needs that nothing else shares, each with other dishes than those before it. */
class Best {
  private readonly found: PartWay[] = [];
  private over = false;

  constructor(
    private readonly puzzle: Puzzle,
    private readonly part: readonly number[],
    private readonly solve: Solve,
  ) {}

  at(pick: number): PartWay | undefined {
    while (this.found.length <= pick && !this.over) {
      const barred = this.found.map(({ open }) => open);
      const way =
        barred.at(-1)?.length === 0
          ? undefined
          : bestBut(this.puzzle, this.part, this.solve, barred, this.found.at(-1)?.figures);
      if (way) this.found.push(way);
      else this.over = true;
    }
    return this.found[pick];
  }
}

/** What ways of the parts come to together; undefined where one of them has none left. */
const sumOf = (picks: readonly number[], lists: readonly Best[]): Figures | undefined => {
  const sum: Figures = { extra: 0, unpriced: 0, cost: 0, work: 0 };
  for (const [at, pick] of picks.entries()) {
    const way = lists[at]!.at(pick);
    if (!way) return undefined;
    for (const aim of aims) sum[aim] += way.figures[aim];
  }
  return sum;
};

const compareSums = (a: Figures | undefined, b: Figures | undefined): number =>
  a && b ? compareFigures(a, b) : Number(b !== undefined) - Number(a !== undefined);

const together = (puzzle: Puzzle, picks: readonly number[], lists: readonly Best[]): Way => {
  const chosen = picks.map((pick, at) => lists[at]!.at(pick)!);
  const served = chosen.flatMap((way) => way.served).sort((a, b) => a.need - b.need || a.offer - b.offer);
  return {
    served,
    open: chosen.flatMap((way) => way.open).sort((a, b) => a - b),
    figures: figuresOf(puzzle, served),
  };
};

/** By a few dishes where they do; else as many dishes as the best one before makes, then more. */
const bestBut = (
  puzzle: Puzzle,
  part: readonly number[],
  solve: Solve,
  barred: readonly number[][],
  before: Figures | undefined,
): PartWay | undefined =>
  byFewDishes(puzzle, part, barred) ??
  (before && leastOf(puzzle, part, solve, { most: { extra: before.extra }, barred })) ??
  leastOf(puzzle, part, solve, { most: {}, barred });

/** Figure after figure: each made least while those before it stay so. None where nothing does. */
const leastOf = (
  puzzle: Puzzle,
  part: readonly number[],
  solve: Solve,
  { most, barred }: Held,
): PartWay | undefined => {
  const held: Held = { most: { ...most }, barred };
  let best: PartWay | undefined;
  const open = aims.filter((aim) => most[aim] === undefined && matters(puzzle, part, aim));
  for (const aim of open.length > 0 ? open : (['extra'] as const)) {
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
