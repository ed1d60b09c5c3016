import type { Puzzle, Take } from './puzzle.js';

/** What an offer costs each need that may take it; `none` where it is not known. */
type Costs = ReadonlyMap<number, number>;

const none = Number.POSITIVE_INFINITY;

const costsOf = ({ offers, needs }: Puzzle): Map<number, Costs> => {
  const costs = new Map<number, Map<number, number>>();
  needs.forEach(({ takes }, need) => {
    for (const { offer, cost } of takes) {
      if (offers[offer]!.extra === 0 || offers[offer]!.feeds !== null) continue;
      costs.set(offer, (costs.get(offer) ?? new Map()).set(need, cost ?? none));
    }
  });
  return costs;
};

/**
 * The same puzzle without dishes that so many others beat in every respect: each of those feeds at least the same
 * guests, at no more cost for any of them and for no more work. In the place of such a dish each of the others makes a
 * way that is no worse, so it stands in none of the best ways, as many as that.
 */
export const withoutHopeless = (puzzle: Puzzle, most: number): Puzzle => {
  const { offers, needs } = puzzle;
  const costs = costsOf(puzzle);
  const hopeless = new Set<number>();
  for (const [at, mine] of costs) {
    let better = 0;
    const [first] = mine.keys();
    for (const { offer } of needs[first!]!.takes) {
      const theirs = costs.get(offer);
      if (offer === at || !theirs || !beats(theirs, mine, offers[offer]!.work - offers[at]!.work, offer < at))
        continue;
      if (++better === most) break;
    }
    if (better === most) hopeless.add(at);
  }
  const hopeful = ({ offer }: Take) => !hopeless.has(offer);
  return { offers, needs: needs.map((need) => ({ ...need, takes: need.takes.filter(hopeful) })) };
};

/** Of two that are equal in all, the earlier one beats the other. */
const beats = (theirs: Costs, mine: Costs, moreWork: number, earlier: boolean): boolean => {
  if (moreWork > 0 || theirs.size < mine.size) return false;
  let same = moreWork === 0 && theirs.size === mine.size;
  for (const [need, cost] of mine) {
    const other = theirs.get(need);
    if (other === undefined || other > cost) return false;
    same &&= other === cost;
  }
  return !same || earlier;
};
