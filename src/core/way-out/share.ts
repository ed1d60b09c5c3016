/** Guests who are alike, what each of them costs apart from these portions, and the bins they could have one of instead. */
export type Sharer = { guests: number; cost: number; bins: readonly number[] };

/**
 * Portions that cost nothing, given where they save most: how many of each sharer's guests get one of each bin, in the
 * order of its bins; undefined where some who have nothing else (an infinite cost) cannot all be given one. Exact: who
 * saves more is served first, and makes room for others only by moving to another bin.
 */
export const shareOut = (sharers: readonly Sharer[], sizes: readonly number[]): number[][] | undefined => {
  const given = sharers.map(({ bins }) => bins.map(() => 0));
  const left = [...sizes];
  const order = [...sharers.keys()]
    .filter((at) => sharers[at]!.cost > 0)
    .sort((a, b) => sharers[b]!.cost - sharers[a]!.cost || a - b);
  for (const at of order) {
    let hungry = sharers[at]!.guests;
    while (hungry > 0) {
      const moved = move(at, hungry, sharers, given, left);
      if (moved === 0) break;
      hungry -= moved;
    }
    if (hungry > 0 && sharers[at]!.cost === Number.POSITIVE_INFINITY) return undefined;
  }
  return given;
};

/** A step into a bin: `by` takes from it, and whoever came to it before makes room for them. */
type Step = { bin: number; by: number; before: Step | undefined };

/** Gives up to so many guests of a sharer portions, moving others from bin to bin; how many it could. */
const move = (
  first: number,
  most: number,
  sharers: readonly Sharer[],
  given: number[][],
  left: number[],
): number => {
  const seen = new Set<number>();
  let steps: Step[] = [];
  const reach = (by: number, before: Step | undefined, into: Step[]) => {
    for (const bin of sharers[by]!.bins) {
      if (seen.has(bin)) continue;
      seen.add(bin);
      into.push({ bin, by, before });
    }
  };
  reach(first, undefined, steps);
  while (steps.length > 0) {
    const end = steps.find(({ bin }) => left[bin]! > 0);
    if (end) return follow(end, most, sharers, given, left);
    const next: Step[] = [];
    for (const step of steps)
      for (const [by, { bins }] of sharers.entries())
        if ((given[by]![bins.indexOf(step.bin)] ?? 0) > 0) reach(by, step, next);
    steps = next;
  }
  return 0;
};

const follow = (
  end: Step,
  most: number,
  sharers: readonly Sharer[],
  given: number[][],
  left: number[],
): number => {
  let some = Math.min(most, left[end.bin]!);
  for (let step = end; step.before; step = step.before)
    some = Math.min(some, given[step.by]![sharers[step.by]!.bins.indexOf(step.before.bin)]!);
  left[end.bin]! -= some;
  for (let step: Step | undefined = end; step; step = step.before) {
    const { bins } = sharers[step.by]!;
    given[step.by]![bins.indexOf(step.bin)]! += some;
    if (step.before) given[step.by]![bins.indexOf(step.before.bin)]! -= some;
  }
  return some;
};
