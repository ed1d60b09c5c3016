import type { Event } from '../facts/event.js';
import type { Facts } from '../facts/facts.js';
import type { Rational } from '../quantity/rational.js';
import { headCount } from '../requirements.js';
import { wholeCost } from './cost-of-party.js';
import { type CurvePoint, curveOf } from './curve.js';
import type { Jump } from './curve-jumps.js';
import { withHeadCount } from './head-count.js';
import { jumpWords } from './step-words.js';
import type { CostView } from './whole-cost.js';

/** What the last of so many guests adds to the cost. */
export type GuestStep = {
  guests: number;
  /** Minor units, exact, as far as known. */
  more: Rational;
  /** false when the cost at this head-count isn't all known. */
  complete: boolean;
  /** What steps up with that guest so that each costs more, the dearest first, each with its sentence. */
  jumps: (Jump & { words: string })[];
};

export type NextStep = {
  /** The last guest of the event, whom one guest fewer saves; undefined without guests. */
  fewer: GuestStep | undefined;
  /** One guest more. */
  more: GuestStep;
  /** Of the head-counts nearby the one whose last guest costs the most, where something steps up; else undefined. */
  most: GuestStep | undefined;
};

/** How many guests fewer and more are nearby. */
const nearby = 10;

/**
 * Where one guest more or fewer changes the cost of an event: the last guest, the next, and the dearest within ten
 * either way, each with what steps up. Groups keep their proportions. Exact, in minor units.
 */
export const nextStep = (
  event: Event,
  facts: Facts,
  view: CostView,
  beside: readonly Event[] = [],
): NextStep => {
  const guests = headCount(event);
  const least = Math.max(0, guests - nearby);
  const { points } = curveOf(event, facts, view, { from: Math.max(1, least), to: guests + nearby }, beside);
  const before = least === 0 ? wholeCost(withHeadCount(event, 0), facts, view, beside) : undefined;
  const steps = points.flatMap((point, i) => {
    const was = i > 0 ? points[i - 1]! : before;
    return was ? [stepTo(was.exact, point)] : [];
  });
  const at = (count: number) => steps.find((step) => step.guests === count);
  return { fewer: at(guests), more: at(guests + 1)!, most: dearest(steps, guests) };
};

const stepTo = (before: Rational, { guests, exact, complete, jumps }: CurvePoint): GuestStep => ({
  guests,
  more: exact.minus(before),
  complete,
  jumps: jumps.map((jump) => ({ ...jump, words: jumpWords(jump, guests) })),
});

/** The nearest of the dearest. */
const dearest = (steps: readonly GuestStep[], guests: number): GuestStep | undefined =>
  steps
    .filter(({ jumps }) => jumps.length > 0)
    .sort((a, b) => b.more.compare(a.more) || Math.abs(a.guests - guests) - Math.abs(b.guests - guests))[0];
