import type { CurvePoint } from './curve.js';
import type { Jump } from './curve-jumps.js';
import { jumpWords } from './step-words.js';

/** What the last of so many guests adds to the cost. */
export type GuestStep = {
  guests: number;
  /** Minor units: the difference of both totals. */
  more: number;
  /** false when either total isn't all known. */
  complete: boolean;
  /** What steps up with that guest so that each costs more, the dearest first, each with its sentence. */
  jumps: (Jump & { words: string })[];
};

export type NextStep = {
  /** The last guest of the event, whom one guest fewer saves. */
  fewer: GuestStep | undefined;
  /** One guest more. */
  more: GuestStep | undefined;
  /** Of the head-counts nearby the one whose last guest costs the most, where something steps up. */
  most: GuestStep | undefined;
};

/** How many guests fewer and more are nearby. */
const nearby = 10;

/**
 * Where one guest more or fewer changes the cost of an event: its last guest, the next, and the dearest within ten
 * either way, each with what steps up; each undefined where the curve doesn't reach or nothing steps up.
 */
export const nextStep = (points: readonly CurvePoint[], guests: number): NextStep => {
  const steps = points.slice(1).map((point, i) => stepTo(points[i]!, point));
  const at = (count: number) => steps.find((step) => step.guests === count);
  const near = steps.filter((step) => step.jumps.length > 0 && away(step.guests, guests) <= nearby);
  const [most] = near.sort((a, b) => b.more - a.more || away(a.guests, guests) - away(b.guests, guests));
  return { fewer: at(guests), more: at(guests + 1), most };
};

const away = (a: number, b: number): number => Math.abs(a - b);

const stepTo = (before: CurvePoint, { guests, total, complete, jumps }: CurvePoint): GuestStep => ({
  guests,
  more: total - before.total,
  complete: complete && before.complete,
  jumps: jumps.map((jump) => ({ ...jump, words: jumpWords(jump, guests) })),
});
