import type { CostBasis, CostLine } from '../facts/cost-line.js';
import type { Event } from '../facts/event.js';
import type { Facts } from '../facts/facts.js';
import type { Problem } from '../problem.js';
import { exact as figure } from '../quantity/amount.js';
import { Rational } from '../quantity/rational.js';
import { noCost, noHourlyCost, noRate } from './problems.js';
import type { CostPart, FoodCost } from './whole-cost.js';
import { type Made, workOf } from './work.js';

export type LinePart = Omit<CostPart, 'cost'>;
type Counted = Omit<LinePart, 'line'> & { problems: Problem[] };
type By<K extends string> = Extract<CostBasis, Record<K, unknown>>;

/** What a line is counted from: the event at so many guests, what it makes, and the costs that stand before it. */
type Ground = { event: Event; facts: Facts; guests: number; made: readonly Made[] };
type Before = { exact: Rational; complete: boolean };

/** The costs of an event beside its food, in their order, in minor units, exact as far as known. */
export const lineCosts = (
  ground: Ground,
  food: Pick<FoodCost, 'exact' | 'complete'>,
): { lines: LinePart[]; problems: Problem[] } => {
  const problems: Problem[] = [];
  let before: Before = food;
  const lines = ground.event.costs.map((line) => {
    const { problems: found, ...counted } = counts(line, ground, food, before);
    problems.push(...found);
    before = {
      exact: before.exact.plus(counted.exact ?? Rational.zero),
      complete: before.complete && counted.complete,
    };
    return { line, ...counted };
  });
  return { lines, problems };
};

const counts = (line: CostLine, ground: Ground, food: Before, before: Before): Counted => {
  const { by } = line;
  if ('percent' in by) return shareOf(by, by.of === 'food' ? food : before);
  if ('hours' in by) return byTheHour(line, by, ground);
  const unknown = noCost(ground.event, line);
  if ('fixed' in by) return sumOf(by.fixed, Rational.one, unknown);
  if ('aGuest' in by) return sumOf(by.aGuest, Rational.of(ground.guests), unknown);
  const steps = stepsBegun(by, ground.guests);
  return { ...sumOf(by.step, Rational.of(steps), unknown), steps };
};

const counted = (exact: Rational | undefined, complete: boolean, problems: Problem[] = []): Counted => ({
  exact,
  complete,
  problems,
  hours: undefined,
  people: undefined,
  steps: undefined,
});

const sumOf = (each: number | null, times: Rational, unknown: Problem): Counted =>
  each === null ? counted(undefined, false, [unknown]) : counted(Rational.of(each).times(times), true);

const hundred = Rational.of(100);

const shareOf = ({ percent }: By<'percent'>, of: Before): Counted =>
  counted(of.exact.times(figure(percent)).over(hundred), of.complete);

/** Steps begun for so many guests: what they take each, and so many per cent to spare, over what a step holds. */
const stepsBegun = ({ each, spare, holds }: By<'step'>, guests: number): number => {
  const wanted = Rational.of(guests).times(figure(each)).times(figure(spare).plus(hundred)).over(hundred);
  return Number(wanted.over(Rational.of(holds)).ceil());
};

/** How many people it takes: so many at least, and one for every so many guests begun. */
const peopleFor = ({ people, guestsEach }: By<'hours'>, guests: number): number =>
  Math.max(people, guestsEach === null ? 0 : Math.ceil(guests / guestsEach));

/**
 * Hours as entered, and those of the drive, are those of each of its people. The hours of cooking, ovens and rings are
 * those of all together: more people share them.
 */
const byTheHour = (line: CostLine, by: By<'hours'>, ground: Ground): Counted => {
  const { event, facts, guests, made } = ground;
  const shared = by.hours === 'cooking' || by.hours === 'ovens' || by.hours === 'rings';
  const people = shared ? undefined : peopleFor(by, guests);
  const each = isWork(by.hours)
    ? workOf(by.hours, event, made, facts)
    : { hours: figure(by.hours), complete: true, problems: [] };
  const hours = people === undefined ? each.hours : each.hours.times(Rational.of(people));
  const { rate, problem } = rateOf(line, by, ground);
  const problems = problem ? [...each.problems, problem] : each.problems;
  const exact = rate && hours.times(rate);
  return { ...counted(exact, each.complete && rate !== undefined, problems), hours, people };
};

const isWork = (hours: By<'hours'>['hours']) =>
  hours === 'cooking' || hours === 'driving' || hours === 'ovens' || hours === 'rings';

/** What an hour costs: as the line says, else what an hour of its person does. */
const rateOf = (
  line: CostLine,
  { rate, person }: By<'hours'>,
  { event, facts }: Ground,
): { rate: Rational | undefined; problem?: Problem } => {
  if (rate !== null) return { rate: Rational.of(rate) };
  const whose = facts.kitchen.people.find(({ key }) => key === person);
  if (!whose) return { rate: undefined, problem: noRate(event, line) };
  if (whose.hourlyCost === null) return { rate: undefined, problem: noHourlyCost(event, line, whose.name) };
  return { rate: Rational.of(whose.hourlyCost) };
};
