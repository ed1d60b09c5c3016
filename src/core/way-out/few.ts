import { compareFigures, type Figures, figuresOf, type Puzzle, type Served } from './puzzle.js';
import { shareOut } from './share.js';

type Found = { served: Served[]; open: number[]; figures: Figures };

// One or two of some hundreds can all be tried; of more dishes so many sets, else a solver is quicker.
const few = 2;
const mostDishes = 5;
const mostTried = 5000;

/**
 * The best way of some needs that makes a few dishes more, or none, by trying each set of them; undefined where so few
 * do not do, where there are too many sets, or where what feeds only so many is anything but portions that are there
 * anyway.
 */
export const byFewDishes = (
  puzzle: Puzzle,
  among: readonly number[],
  barred: readonly (readonly number[])[],
): Found | undefined => {
  const part = partOf(puzzle, among);
  if (!part) return undefined;
  for (let dishes = 0; dishes <= mostDishes; dishes++) {
    const trying = { left: dishes > few ? mostTried : Infinity, seen: new Set<string>() };
    const tried = [...setsOf(part, dishes, [], trying)];
    if (trying.left < 0) return undefined;
    const sets = tried
      .filter((open) => !barred.some((set) => set.every((at) => open.includes(at))))
      .flatMap((open) => boundOf(part, open));
    sets.sort((a, b) => a.bound - b.bound);
    let best: Found | undefined;
    let least = Number.POSITIVE_INFINITY;
    for (const { open, bound } of sets) {
      if (bound > least) break;
      const served = servedBy(part, open);
      const figures = served && figuresOf(puzzle, served);
      if (figures?.extra !== dishes || (best && compareFigures(figures, best.figures) >= 0)) continue;
      best = { served: served!, open: open.toSorted((a, b) => a - b), figures };
      least = figures.unpriced * part.dear + figures.cost;
    }
    if (best) return best;
  }
  return undefined;
};

/** A dish that feeds any number, and what a guest costs by it, a cost that is not known more than all others together. */
type Ample = { offer: number; cost: number };

type PartNeed = {
  at: number;
  guests: number;
  free: Ample | undefined;
  dishes: Map<number, Ample>;
  bins: number[];
};

type Part = {
  needs: PartNeed[];
  /** What portions there are of each dish that feeds only so many, and which it is. */
  sizes: number[];
  scarce: number[];
  dear: number;
};

const partOf = ({ offers, needs }: Puzzle, among: readonly number[]): Part | undefined => {
  const own = among.map((at) => ({ at, ...needs[at]! }));
  const takes = own.flatMap((need) => need.takes);
  const guests = own.reduce((n, need) => n + need.guests, 0);
  const dear = 1 + 2 * guests * takes.reduce((most, { cost }) => Math.max(most, Math.abs(cost ?? 0)), 0);
  const plain = takes.every(({ offer, cost }) => {
    const { extra, work, feeds } = offers[offer]!;
    return feeds === null ? extra === 1 || work === 0 : extra === 0 && work === 0 && cost === 0;
  });
  if (!plain || dear * guests > Number.MAX_SAFE_INTEGER / 4) return undefined;
  const scarce = [...new Set(takes.flatMap(({ offer }) => (offers[offer]!.feeds === null ? [] : [offer])))];
  return {
    dear,
    scarce,
    sizes: scarce.map((offer) => offers[offer]!.feeds!),
    // Whoever could have least is looked at first, so that there are few dishes to go on from.
    needs: own
      .sort((a, b) => a.takes.length - b.takes.length || a.at - b.at)
      .map((need) => {
        const part: PartNeed = {
          at: need.at,
          guests: need.guests,
          free: undefined,
          dishes: new Map(),
          bins: [],
        };
        for (const { offer, cost } of need.takes) {
          const ample = { offer, cost: cost ?? dear };
          if (offers[offer]!.feeds !== null) part.bins.push(scarce.indexOf(offer));
          else if (offers[offer]!.extra === 1) part.dishes.set(offer, ample);
          else part.free = cheaper(part.free, ample);
        }
        return part;
      }),
  };
};

const cheaper = (a: Ample | undefined, b: Ample | undefined): Ample | undefined => {
  if (!a || !b) return a ?? b;
  return b.cost < a.cost || (b.cost === a.cost && b.offer < a.offer) ? b : a;
};

/**
 * Every set of so many dishes that may leave nobody without: built up for whoever is left without so far, and, where
 * portions that are there must be shared out, of any dishes besides.
 */
function* setsOf(
  part: Part,
  dishes: number,
  made: readonly number[],
  trying: { left: number; seen: Set<string> },
): Generator<readonly number[]> {
  const left = part.needs.find(
    (need) => !need.free && need.bins.length === 0 && !made.some((at) => need.dishes.has(at)),
  );
  if (dishes === 0 || (!left && part.scarce.length === 0)) {
    const mark = made.toSorted((a, b) => a - b).join();
    trying.left -= 1;
    if (left || trying.seen.has(mark)) return;
    trying.seen.add(mark);
    yield made;
    return;
  }
  const any = left ? left.dishes.keys() : new Set(part.needs.flatMap((need) => [...need.dishes.keys()]));
  for (const offer of any)
    if (trying.left >= 0 && !made.includes(offer)) yield* setsOf(part, dishes - 1, [...made, offer], trying);
}

/** The cheapest for a need of what is made or stands on the menu for any number. */
const ampleFor = (need: PartNeed, open: readonly number[]): Ample | undefined =>
  open.reduce((best, offer) => cheaper(best, need.dishes.get(offer)), need.free);

/**
 * What guests cost at least with these dishes, as if all portions that are there did for everybody who can eat of any
 * of them; none where not even then all are fed.
 */
const boundOf = (part: Part, open: readonly number[]): { open: readonly number[]; bound: number }[] => {
  let portions = part.sizes.reduce((n, size) => n + size, 0);
  let bound = 0;
  const savings: { guests: number; each: number }[] = [];
  for (const need of part.needs) {
    const ample = ampleFor(need, open);
    if (!ample) portions -= need.guests;
    else {
      bound += ample.cost * need.guests;
      if (need.bins.length > 0 && ample.cost > 0) savings.push({ guests: need.guests, each: ample.cost });
    }
  }
  if (portions < 0) return [];
  for (const { guests, each } of savings.sort((a, b) => b.each - a.each)) {
    const some = Math.min(guests, portions);
    portions -= some;
    bound -= each * some;
  }
  return [{ open, bound }];
};

/** Who is served what with these dishes: portions that are there where they save most, for the rest the cheapest. */
const servedBy = ({ needs, sizes, scarce }: Part, open: readonly number[]): Served[] | undefined => {
  const ample = needs.map((need) => ampleFor(need, open));
  const sharers = needs.map(({ guests, bins }, i) => ({ guests, bins, cost: ample[i]?.cost ?? Infinity }));
  const given = shareOut(sharers, sizes);
  if (!given) return undefined;
  return needs.flatMap(({ at: need, guests, bins }, i) => {
    const some = bins.map((bin, at) => ({ need, offer: scarce[bin]!, guests: given[i]![at]! }));
    const left = guests - given[i]!.reduce((n, portions) => n + portions, 0);
    const rest = left > 0 ? [{ need, offer: ample[i]!.offer, guests: left }] : [];
    return [...some.filter((one) => one.guests > 0), ...rest];
  });
};
