/** Guests who can all take the same: how many they are, and which bins they may take from, at what cost each. */
export type Eaters = { guests: number; from: readonly { bin: number; cost: number }[] };

/** Eaters who go without, with all others who eat from the same bins: together more than these hold. */
export type Shortage = { eaters: number[]; bins: number[]; guests: number; portions: number };

export type Filled = {
  /** How many of each eaters' guests are given how much from each of their bins, in the order of `from`. */
  given: number[][];
  /** How many of each are left without. */
  without: number[];
  shortages: Shortage[];
};

/**
 * Portions for guests, exactly: as many guests as can be are fed, and among such ways one of the least cost. Whole
 * portions; each guest takes one. Where not all are fed it says who competes for what.
 */
export const fill = (eaters: readonly Eaters[], bins: readonly number[]): Filled => {
  const given = eaters.map(({ from }) => from.map(() => 0));
  const without = eaters.map(({ guests }) => guests);
  const left = [...bins];
  const takers = takersOf(eaters, bins);
  const next = () => cheapest(eaters, takers, given, without, left);
  for (let way = next(); way; way = next()) {
    const most = Math.min(
      without[way[0]!.eater]!,
      left[way.at(-1)!.bin]!,
      ...way.flatMap(({ takenFrom }) => (takenFrom ? [given[takenFrom.eater]![takenFrom.at]!] : [])),
    );
    without[way[0]!.eater]! -= most;
    left[way.at(-1)!.bin]! -= most;
    for (const { eater, at, takenFrom } of way) {
      given[eater]![at]! += most;
      if (takenFrom) given[takenFrom.eater]![takenFrom.at]! -= most;
    }
  }
  return { given, without, shortages: shortagesOf(eaters, takers, given, without, bins) };
};

/** Who may take from each bin, and where it stands in their list. */
type Takers = readonly (readonly { eater: number; at: number }[])[];

const takersOf = (eaters: readonly Eaters[], bins: readonly number[]): Takers => {
  const takers: { eater: number; at: number }[][] = bins.map(() => []);
  for (const [eater, { from }] of eaters.entries())
    for (const [at, { bin }] of from.entries()) takers[bin]!.push({ eater, at });
  return takers;
};

/** Eaters take from a bin; where it is given out, `takenFrom` gives up theirs and takes from the next bin instead. */
type Step = { eater: number; at: number; bin: number; takenFrom: { eater: number; at: number } | undefined };

/** The cheapest way to feed one guest more, moving others from bin to bin; undefined when there is none. */
const cheapest = (
  eaters: readonly Eaters[],
  takers: Takers,
  given: readonly number[][],
  without: readonly number[],
  left: readonly number[],
): Step[] | undefined => {
  const costs = eaters.map((_, e) => (without[e]! > 0 ? 0 : Number.POSITIVE_INFINITY));
  const before: ({ eater: number; at: number; bin: number; mine: number } | undefined)[] = eaters.map(
    () => undefined,
  );
  // Bellman and Ford: a cost may be given back, so shorter ways are looked for until none is found.
  for (let moved = true; moved; ) {
    moved = false;
    for (const [e, { from }] of eaters.entries())
      for (const [at, { bin, cost }] of from.entries())
        for (const { eater: other, at: mine } of takers[bin]!) {
          if (other === e || given[other]![mine] === 0) continue;
          const sum = costs[e]! + cost - eaters[other]!.from[mine]!.cost;
          if (!(sum < costs[other]!)) continue;
          costs[other] = sum;
          before[other] = { eater: e, at, bin, mine };
          moved = true;
        }
  }
  let best: { eater: number; at: number; bin: number; cost: number } | undefined;
  for (const [e, { from }] of eaters.entries())
    for (const [at, { bin, cost }] of from.entries())
      if (left[bin]! > 0 && costs[e]! + cost < (best?.cost ?? Number.POSITIVE_INFINITY))
        best = { eater: e, at, bin, cost: costs[e]! + cost };
  if (!best) return undefined;
  const way: Step[] = [{ eater: best.eater, at: best.at, bin: best.bin, takenFrom: undefined }];
  for (let at = before[best.eater]; at; at = before[way[0]!.eater])
    way.unshift({
      eater: at.eater,
      at: at.at,
      bin: at.bin,
      takenFrom: { eater: way[0]!.eater, at: at.mine },
    });
  return way;
};

const shortagesOf = (
  eaters: readonly Eaters[],
  takers: Takers,
  given: readonly number[][],
  without: readonly number[],
  sizes: readonly number[],
): Shortage[] => {
  const found: { eaters: Set<number>; bins: Set<number> }[] = [];
  for (const [first] of eaters.entries()) {
    if (without[first] === 0) continue;
    const reached = { eaters: new Set([first]), bins: new Set<number>() };
    for (const e of reached.eaters)
      for (const { bin } of eaters[e]!.from) {
        reached.bins.add(bin);
        for (const { eater, at } of takers[bin]!) if (given[eater]![at]! > 0) reached.eaters.add(eater);
      }
    const same = found.filter((one) => [...one.eaters].some((e) => reached.eaters.has(e)));
    for (const one of same) {
      for (const e of one.eaters) reached.eaters.add(e);
      for (const bin of one.bins) reached.bins.add(bin);
      found.splice(found.indexOf(one), 1);
    }
    found.push(reached);
  }
  return found.map(({ eaters: those, bins }) => ({
    eaters: [...those].sort((a, b) => a - b),
    bins: [...bins].sort((a, b) => a - b),
    guests: [...those].reduce((n, e) => n + eaters[e]!.guests, 0),
    portions: [...bins].reduce((n, bin) => n + sizes[bin]!, 0),
  }));
};
