/** A stream of choices that one seed settles (mulberry32). */
export const choices = (seed: number) => {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const upTo = (most: number) => Math.floor(next() * (most + 1));
  const pick = <T>(list: readonly T[]): T => list[upTo(list.length - 1)]!;
  return { upTo, pick, once: (in100: number) => upTo(99) < in100 };
};
export type Choices = ReturnType<typeof choices>;

/** Numbers padded, so that keys sort as they count. */
export const keyOf = (kind: string, i: number) => `${kind}-${String(i).padStart(4, '0')}`;
export const span = (length: number) => Array.from({ length }, (_, i) => i);
