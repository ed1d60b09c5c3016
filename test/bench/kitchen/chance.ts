/** Chance that always falls the same way: each thing has a stream of its own, so more events never change the first. */
export type Chance = {
  /** A whole number from 0 to below n. */
  below(n: number): number;
  /** A whole number from `least` to `most`, both included. */
  between(least: number, most: number): number;
  /** True that many times in a hundred. */
  percent(n: number): boolean;
  pick<T>(list: readonly T[]): T;
};

export const chanceFor = (name: string): Chance => {
  let state = 2166136261;
  for (const letter of name) state = Math.imul(state ^ letter.charCodeAt(0), 16777619);
  const next = () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const below = (n: number) => Math.floor(next() * n);
  return {
    below,
    between: (least, most) => least + below(most - least + 1),
    percent: (n) => next() * 100 < n,
    pick: (list) => list[below(list.length)]!,
  };
};
