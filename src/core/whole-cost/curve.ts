import { costOfEvent } from '../costing.js';
import type { Event } from '../facts/event.js';
import { type Facts, factsOf } from '../facts/facts.js';
import { toMinor } from '../money.js';
import { Rational, sum } from '../quantity/rational.js';
import { boughtFood, shoppersBeside } from './bought.js';
import { type FoodAt, type FoodGrowing, foodAt, foodGrowing } from './curve-food.js';
import { type Jump, jumpsBetween, type Steps, type What } from './curve-jumps.js';
import { withHeadCount } from './head-count.js';
import { type LinePart, lineCosts } from './line-costs.js';
import type { CostView } from './whole-cost.js';

/** What an event costs with so many guests, as it would be worked out for them alone. */
export type CurvePoint = {
  guests: number;
  event: Event;
  food: { exact: Rational; complete: boolean };
  /** In minor units, exact, as far as known. */
  exact: Rational;
  /** Minor units, rounded once, halves up: in all, and of a guest. */
  total: number;
  aGuest: number;
  complete: boolean;
  /** What steps up here where a guest costs more than with one guest fewer, the dearest first; else none. */
  jumps: Jump[];
};

export type HeadCounts = { from: number; to: number };
export type Curve = { view: CostView; points: CurvePoint[] };

type Worked = { event: Event; facts: Facts; view: CostView; food: FoodGrowing; complete: boolean };

/**
 * What an event costs at each head-count from one guest or more, in minor units, exact: what `wholeCost` says of the
 * event with so many guests, whose groups keep their proportions. In the bought view packs are shared with `beside`.
 */
export const curveOf = (
  event: Event,
  today: Facts,
  view: CostView,
  { from, to }: HeadCounts,
  beside: readonly Event[] = [],
): Curve => {
  const facts = factsOf(event, today);
  const shoppers = view === 'bought' ? shoppersBeside(event, today, beside) : [];
  // Whether all of the food is known doesn't turn on how many come.
  const { value: cost } = costOfEvent(event, facts);
  const { complete } = view === 'used' ? cost : boughtFood(event, cost, facts, shoppers).food;
  const worked = { event, facts, view, food: foodGrowing(event, facts, shoppers), complete };
  const points: CurvePoint[] = [];
  let before = from > 1 ? pointAt(worked, from - 1) : undefined;
  for (let guests = from; guests <= to; guests += 1) {
    const here = pointAt(worked, guests);
    points.push({ ...here.point, jumps: before ? jumpsTo(before, here) : [] });
    before = here;
  }
  return { view, points };
};

type At = { point: Omit<CurvePoint, 'jumps'>; steps: () => Steps };

const pointAt = ({ event, facts, view, food, complete }: Worked, guests: number): At => {
  const there = withHeadCount(event, guests);
  const eaten = foodAt(food, there, view, facts);
  const known = { exact: eaten.exact, complete };
  const { lines } = lineCosts({ event: there, facts, guests, made: eaten.made }, known);
  const exact = sum([eaten.exact, ...lines.map((line) => line.exact ?? Rational.zero)]);
  const point = {
    guests,
    event: there,
    food: known,
    exact,
    total: toMinor(exact),
    aGuest: toMinor(exact.over(Rational.of(guests))),
    complete: complete && lines.every((line) => line.complete),
  };
  return { point, steps: () => stepsAt(guests, eaten, lines) };
};

const minutesIn = (hours: Rational): number => Number(hours.times(Rational.of(60)).round());

const stepsAt = (guests: number, { stepped, made }: FoodAt, lines: readonly LinePart[]): Steps => ({
  guests,
  begun: made.map(({ recipe, batches }) => ({ recipe, begun: Number(batches?.ceil() ?? 0n) })),
  stepped: [
    ...stepped(),
    ...lines.flatMap(({ line, people, steps, hours, exact }) => {
      if (!exact) return [];
      const count = people ?? steps ?? (hours && minutesIn(hours));
      if (count === undefined) return [];
      const what: What =
        people === undefined && steps === undefined
          ? { of: 'work', line, batches: [] }
          : { of: people === undefined ? 'steps' : 'people', line };
      return [{ what, count, cost: () => exact }];
    }),
  ],
});

/** Jumps are where each guest costs more; without anything that steps, one comes who eats more than most. */
const jumpsTo = (before: At, here: At): Jump[] => {
  const [was, is] = [before.point, here.point];
  const rises = is.exact.times(Rational.of(was.guests)).compare(was.exact.times(Rational.of(is.guests))) > 0;
  if (!rises) return [];
  const jumps = jumpsBetween(before.steps(), here.steps());
  const group = is.event.groups.find((one, i) => one.guests > was.event.groups[i]!.guests);
  if (jumps.length > 0 || !group) return jumps;
  const { guests: to } = group;
  return [{ what: { of: 'guest', group }, from: to - 1, to, more: is.exact.minus(was.exact) }];
};
