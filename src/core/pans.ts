import type { Pan, Place } from './facts/place.js';
import type { Step } from './facts/recipe.js';
import { exact } from './quantity/amount.js';
import { Rational } from './quantity/rational.js';

/** Some of one kind of pan. */
export type PanUse = { pan: Pan; count: number };

/** What a step asks of a place's pans: the litres, and the pans that hold them at once or in so many goes; none if not known. */
export type PanNeed = { litres: Rational; place: Place | undefined; pans: PanUse[]; goes: bigint };

/**
 * The pans for so many batches of a step: the fewest that hold the litres at once, each as small as will still do; where
 * all together are too small, the biggest kind in goes. Undefined where the step names no litres.
 */
export const pansFor = (step: Step, batches: Rational, place: Place | undefined): PanNeed | undefined => {
  if (step.pan === null || batches.isZero) return undefined;
  const litres = exact(step.pan).times(batches);
  const kinds = (place?.pans ?? []).map((pan) => ({ pan, holds: exact(pan.litres), count: pan.count }));
  const known = kinds.filter(({ holds }) => !holds.isZero).sort((a, b) => b.holds.compare(a.holds));
  if (known.length === 0) return { litres, place, pans: [], goes: 0n };
  const fewest = atOnce(known, litres);
  if (fewest) return { litres, place, pans: fewest, goes: 1n };
  const [{ pan, holds, count }] = known as [Kind];
  return { litres, place, pans: [{ pan, count }], goes: litres.over(holds.times(Rational.of(count))).ceil() };
};

type Kind = { pan: Pan; holds: Rational; count: number };

/** Biggest first until they hold it, then the last of them the smallest that will do, and so on. */
const atOnce = (kinds: readonly Kind[], litres: Rational): PanUse[] | undefined => {
  const all = kinds.flatMap((kind) => Array.from({ length: kind.count }, () => kind));
  const chosen: Kind[] = [];
  let left = litres;
  for (const one of all) {
    if (left.sign <= 0) break;
    chosen.push(one);
    left = left.minus(one.holds);
  }
  if (left.sign > 0) return undefined;
  const spare = all.slice(chosen.length).reverse();
  for (let at = chosen.length - 1; at >= 0; at--) {
    const enough = spare.findIndex(({ holds }) => chosen[at]!.holds.minus(holds).plus(left).sign <= 0);
    if (enough < 0) continue;
    const [smaller] = spare.splice(enough, 1) as [Kind];
    left = left.plus(chosen[at]!.holds).minus(smaller.holds);
    chosen[at] = smaller;
  }
  return kinds.flatMap(({ pan }) => {
    const count = chosen.filter((one) => one.pan === pan).length;
    return count > 0 ? [{ pan, count }] : [];
  });
};

/** Oven shelves at once and how often the ovens are filled; loads 0 where no oven of the place goes to that heat. */
export type ShelfNeed = { shelves: number; room: number; loads: number; place: Place };

/** How many loads of the ovens that go to the step's heat, within its tolerance, so many shelves make; whole, rounded up. */
export const loadsFor = (step: Step, shelves: number, place: Place): ShelfNeed | undefined => {
  const { oven } = step;
  if (!oven || shelves === 0) return undefined;
  const room = place.ovens
    .filter(
      ({ coolest, hottest }) =>
        coolest <= oven.heat + oven.tolerance && hottest >= oven.heat - oven.tolerance,
    )
    .reduce((sum, { shelves }) => sum + shelves, 0);
  return { shelves, room, loads: room === 0 ? 0 : Math.ceil(shelves / room), place };
};
