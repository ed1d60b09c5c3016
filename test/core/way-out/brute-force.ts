import { compareFigures, type Figures, type Puzzle } from '../../../src/core/way-out/puzzle.js';

/** Every way there is to give each guest something; the least of their figures, or undefined. */
export const bruteForce = ({ offers, needs }: Puzzle, barred: readonly number[][]): Figures | undefined => {
  let best: Figures | undefined;
  const left = offers.map(({ feeds }) => feeds ?? Number.POSITIVE_INFINITY);
  const eaten = offers.map(() => 0);
  const compare = (unpriced: number, cost: number) => {
    const used = offers.map((_, i) => i).filter((i) => eaten[i]! > 0);
    if (barred.some((set) => set.every((one) => used.includes(one)))) return;
    const sum = (of: 'extra' | 'work') => used.reduce((n, i) => n + offers[i]![of], 0);
    const figures = { extra: sum('extra'), unpriced, cost, work: sum('work') };
    if (!best || compareFigures(figures, best) < 0) best = figures;
  };
  // Guests of a need are all alike, so only how many of them take what is tried, not who.
  const give = (need: number, at: number, guests: number, unpriced: number, cost: number): void => {
    if (guests === 0) {
      if (need + 1 === needs.length) compare(unpriced, cost);
      else give(need + 1, 0, needs[need + 1]!.guests, unpriced, cost);
      return;
    }
    const take = needs[need]!.takes[at];
    if (!take) return;
    for (let some = 0; some <= Math.min(guests, left[take.offer]!); some++) {
      left[take.offer]! -= some;
      eaten[take.offer]! += some;
      const [dear, more] = take.cost === null ? [some, 0] : [0, take.cost * some];
      give(need, at + 1, guests - some, unpriced + dear, cost + more);
      left[take.offer]! += some;
      eaten[take.offer]! -= some;
    }
  };
  give(0, 0, needs[0]!.guests, 0, 0);
  return best;
};
