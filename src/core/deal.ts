import type { Dish, Guest } from './facts/event.js';
import type { Eaters, Filled } from './fill.js';
import type { Bin } from './portion-bins.js';

/** How many portions of a dish are a guest's, where not all who could have it can; 0 where they leave it for others. */
export type Dealt = ReadonlyMap<Guest, ReadonlyMap<Dish, number>>;

type Alike = Eaters & { who: readonly Guest[] };

/**
 * Who gets the portions of dishes that not all who could eat them can have, as they were shared out: guests in the
 * order they are listed. Nothing is dealt of a dish of which there is enough for all who could want it, nor to guests
 * whose portions do not reach whatever is done; `sure` says whether a taking may be promised.
 */
export const deal = (
  alike: readonly Alike[],
  bins: readonly Bin[],
  { given, shortages }: Filled,
  sure: (cost: number) => boolean,
): Map<Guest, Map<Dish, number>> => {
  const wanted = alike.map(({ from }) => from.filter(({ cost }) => sure(cost)).map(({ bin }) => bin));
  const ample = ampleFor(alike, bins, wanted);
  const without = new Set(shortages.flatMap(({ eaters }) => eaters));
  const dealt = new Map<Guest, Map<Dish, number>>();
  for (const [at, { from, who }] of alike.entries()) {
    if (without.has(at)) continue;
    const scarce = new Set(wanted[at]!.map((bin) => bins[bin]!.dish).filter((dish) => !ample[at]!.has(dish)));
    if (scarce.size === 0) continue;
    const left = new Map([...scarce].map((dish) => [dish, 0]));
    for (const [i, { bin }] of from.entries()) {
      const { dish } = bins[bin]!;
      if (left.has(dish)) left.set(dish, left.get(dish)! + given[at]![i]!);
    }
    for (const guest of who) dealt.set(guest, portionsOf(guest, left));
  }
  return dealt;
};

/** A guest's portions, taken from what is left for all who eat alike. */
const portionsOf = ({ count }: Guest, left: Map<Dish, number>): Map<Dish, number> => {
  let hungry = count;
  return new Map(
    [...left].map(([dish, portions]) => {
      const some = Math.min(hungry, portions);
      hungry -= some;
      left.set(dish, portions - some);
      return [dish, some];
    }),
  );
};

/** The dishes of which each of the eaters may have as they like, for there is enough for all who could want it. */
const ampleFor = (
  alike: readonly Alike[],
  bins: readonly Bin[],
  wanted: readonly (readonly number[])[],
): Set<Dish>[] => {
  const ample = alike.map(() => new Set<Dish>());
  for (const kept of [true, false])
    for (const [bin, one] of bins.entries()) {
      if (one.kept !== kept) continue;
      const takers = [...alike.keys()].filter((at) => wanted[at]!.includes(bin) && !ample[at]!.has(one.dish));
      const guests = takers.reduce((n, at) => n + alike[at]!.guests, 0);
      if (guests <= one.size) for (const at of takers) ample[at]!.add(one.dish);
    }
  return ample;
};
