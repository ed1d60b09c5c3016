import type { Frame } from './curve-frame.js';

type Anchor = 'start' | 'middle' | 'end';
/** Words as they may stand on a drawing, and how they are set. */
export type Label = { words: string; kind: string; x: number; y: number; anchor: Anchor };
/** Where else the same words may stand, the first of these where they fit. */
export type Places = { words: string; kind: string; at: readonly Omit<Label, 'words' | 'kind'>[] };

type Box = { left: number; right: number; top: number; bottom: number };
export type Spot = { x: number; y: number };

// Encode Sans at 89 per cent: a sign is under half as wide as it is high, a bold one just over.
const signWidth: Record<string, number> = { now: 9.2 };
const height = 15;

const boxOf = ({ words, kind, x, y, anchor }: Label): Box => {
  const width = words.length * (signWidth[kind] ?? 7.2);
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return { left: left - 3, right: left + width + 3, top: y - height + 1, bottom: y + 4 };
};

const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** Whether a line from spot to spot comes into a box. */
const crosses = (from: Spot, to: Spot, box: Box): boolean => {
  if (to.x < box.left || from.x > box.right) return false;
  const at = (x: number) => from.y + ((to.y - from.y) * (x - from.x)) / (to.x - from.x || 1);
  const ys = [Math.max(box.left, from.x), Math.min(box.right, to.x)].map(at);
  return Math.max(...ys) > box.top && Math.min(...ys) < box.bottom;
};

/**
 * Labels that stand inside the frame, cover no line and no other label; in the order asked, one that has no place is
 * left out, and no more than `most` of the last kind are set.
 */
export const placed = (
  frame: Frame,
  asked: readonly Places[],
  lines: readonly (readonly Spot[])[],
  most: number,
): Label[] => {
  const set: Label[] = [];
  const taken: Box[] = [];
  const fits = (box: Box): boolean =>
    box.left >= 0 &&
    box.right <= frame.width &&
    box.top >= 0 &&
    box.bottom <= frame.bottom &&
    !taken.some((other) => overlap(box, other)) &&
    !lines.some((line) => line.some((to, i) => i > 0 && crosses(line[i - 1]!, to, box)));
  for (const { words, kind, at } of asked) {
    if (kind === 'jump' && set.filter((one) => one.kind === 'jump').length >= most) continue;
    const label = at.map((place) => ({ words, kind, ...place })).find((one) => fits(boxOf(one)));
    if (!label) continue;
    set.push(label);
    taken.push(boxOf(label));
  }
  return set;
};
