import {
  compareFigures,
  type Figures,
  figuresOf,
  type Need,
  type Puzzle,
  type Served,
  type Take,
} from './puzzle.js';

type Found = { served: Served[]; open: number[]; figures: Figures };

// Three of a hundred would be too many to try each.
const mostDishes = 2;

/**
 * The best way of some needs that makes one or two dishes more, or none, by trying each; undefined where so few do not
 * do, where those that do are barred, or where some offer feeds only so many, so that trying dishes is not enough.
 */
export const byFewDishes = (
  puzzle: Puzzle,
  among: readonly number[],
  barred: readonly (readonly number[])[],
): Found | undefined => {
  const { offers, needs } = puzzle;
  const plain = ({ offer }: Take) =>
    offers[offer]!.feeds === null && (offers[offer]!.extra === 1 || offers[offer]!.work === 0);
  if (!among.every((at) => needs[at]!.takes.every(plain))) return undefined;
  for (let dishes = 0; dishes <= mostDishes; dishes++) {
    let best: Found | undefined;
    for (const open of setsOf(puzzle, among, dishes, [])) {
      if (barred.some((set) => set.every((at) => open.includes(at)))) continue;
      const served = among.map((need) => servedBy(needs[need]!, need, open, puzzle));
      const figures = figuresOf(puzzle, served);
      if (figures.extra === dishes && (!best || compareFigures(figures, best.figures) < 0))
        best = { served, open: open.toSorted((a, b) => a - b), figures };
    }
    if (best) return best;
  }
  return undefined;
};

/** Every set of so many dishes that leaves nobody without, each built up for whoever is left without so far. */
function* setsOf(
  puzzle: Puzzle,
  among: readonly number[],
  dishes: number,
  made: readonly number[],
): Generator<readonly number[]> {
  const { offers, needs } = puzzle;
  const eats = ({ offer }: Take) => offers[offer]!.extra === 0 || made.includes(offer);
  const left = among.find((at) => !needs[at]!.takes.some(eats));
  if (left === undefined) yield made;
  else if (dishes > 0)
    for (const { offer } of needs[left]!.takes) yield* setsOf(puzzle, among, dishes - 1, [...made, offer]);
}

/** The cheapest of what is made for a need, or stands on the menu. */
const servedBy = (
  { takes, guests }: Need,
  need: number,
  open: readonly number[],
  { offers }: Puzzle,
): Served => {
  let best: Take | undefined;
  for (const take of takes)
    if ((offers[take.offer]!.extra === 0 || open.includes(take.offer)) && (!best || cheaper(take, best) < 0))
      best = take;
  return { need, offer: best!.offer, guests };
};

const cheaper = (a: Take, b: Take): number => {
  if (a.cost === b.cost) return a.offer - b.offer;
  if (a.cost === null) return 1;
  return b.cost === null ? -1 : a.cost - b.cost;
};
