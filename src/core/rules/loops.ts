import type { KnownRecipe } from '../known.js';

/**
 * The keys around a loop that starts and ends at `start`, if it reaches itself through any depth of what `next` says;
 * the shortest such loop, undefined when there is none.
 */
export const loopFrom = (
  start: string,
  next: (key: string) => readonly string[],
): readonly string[] | undefined => {
  const cameFrom = new Map<string, string>();
  const open = [start];
  for (const key of open)
    for (const one of next(key)) {
      if (one === start) return [...trail(start, key, cameFrom), start];
      if (cameFrom.has(one)) continue;
      cameFrom.set(one, key);
      open.push(one);
    }
  return undefined;
};

const trail = (start: string, end: string, cameFrom: ReadonlyMap<string, string>): string[] => {
  const keys = [end];
  for (let key = end; key !== start; ) {
    key = cameFrom.get(key) ?? start;
    keys.unshift(key);
  }
  return keys;
};

/** A loop in words: "Leek tart → Shortcrust → Leek tart". */
export const loopInWords = (keys: readonly string[], at: (key: string) => KnownRecipe | undefined): string =>
  keys.map((key) => at(key)?.name ?? key).join(' → ');
