import { type Back, backFrom, servedOn, serviceMinutes } from './calendar.js';
import { daysAheadOf, dueDays, followers } from './due.js';
import type { Course, Event } from './facts/event.js';
import type { Facts } from './facts/facts.js';
import type { Step } from './facts/recipe.js';
import type { Problem } from './problem.js';
import { noDrive } from './problems.js';
import type { CourseNeed, DishNeed } from './requirements.js';
import type { RecipeNeed } from './scaling.js';

/** A step of the day itself, in minutes from midnight of the event's day, at the latest that service allows. */
export type LatestStep = {
  need: RecipeNeed;
  step: Step;
  start: number;
  end: number;
};

/** The day's work on a dish and when it starts, undefined where none is left for the day or minutes are missing. */
export type DishDay = { dish: DishNeed; steps: LatestStep[]; start: number | undefined };

/** Something that must be ready at a time, undefined when that time can't be worked out, at the venue or at home. */
type Ready = { by: number | undefined; venue: boolean };

/**
 * The latest each step of an event's day may start and end for its course's service time, backwards through steps and
 * components, dish by dish, as if ovens and hands had no limit (critical path method, backward pass). Work at home ends
 * a drive before what follows at the venue; a drive that isn't stated counts none. A step without minutes leaves
 * everything before it open, so those steps are absent.
 */
export const latestSteps = (event: Event, needs: readonly CourseNeed[], facts: Facts): DishDay[] => {
  const { due } = dueDays(event, facts);
  const clock: Clock = {
    drive: driveTo(event, facts),
    back: backFrom(event.date, facts.kitchen.timeZone),
  };
  return needs.flatMap(({ course, dishes }) =>
    dishes.map((dish) => dishDay(dish, course, event, due, clock)),
  );
};

/** The drive to the venue, and the time on the kitchen's clock so many real minutes before another. */
type Clock = { drive: number; back: Back };

const driveTo = (event: Event, facts: Facts): number => {
  const place = facts.places.get(event.place);
  return place?.kind === 'venue' ? (place.drive ?? 0) : 0;
};

/** Asks for the drive to a venue where work at home is timed by it. */
export const driveProblems = (event: Event, days: readonly DishDay[], facts: Facts): Problem[] => {
  const place = facts.places.get(event.place);
  const atHome = days.some(({ steps }) => steps.some(({ step }) => step.where !== 'venue'));
  return place?.kind === 'venue' && place.drive === null && atHome ? [noDrive(place)] : [];
};

const dishDay = (
  dish: DishNeed,
  course: Course,
  event: Event,
  due: ReadonlyMap<string, string>,
  clock: Clock,
): DishDay => {
  const day = servedOn(event, course);
  const ready = new Map<string, Ready[]>([[dish.recipe.key, [{ by: serviceMinutes(course), venue: true }]]]);
  const steps: LatestStep[] = [];
  let open = false;
  for (const need of dish.recipes) {
    const { recipe } = need;
    if (due.get(recipe.key) !== day) continue;
    const wanted = ready.get(recipe.key)!;
    const ahead = daysAheadOf(recipe);
    const times = backwards(need, wanted, clock);
    const ofDay = times.filter((_, i) => ahead[i] === 0);
    for (const { start, end, step } of ofDay) {
      if (start === undefined || end === undefined) open = true;
      else steps.push({ need, step, start, end });
    }
    const before = times.length ? [earliest(times)] : wanted;
    for (const { component } of need.lines)
      if (component) ready.set(component.key, soonest([...(ready.get(component.key) ?? []), ...before]));
  }
  const start = open || steps.length === 0 ? undefined : Math.min(...steps.map((step) => step.start));
  return { dish, steps, start };
};

/** Of all that something must be ready for, the first at home and the first at the venue. */
const soonest = (ready: readonly Ready[]): Ready[] =>
  [false, true].flatMap((venue) => {
    const there = ready.filter((one) => one.venue === venue);
    if (there.length === 0) return [];
    const open = there.some(({ by }) => by === undefined);
    return [{ by: open ? undefined : Math.min(...there.map(({ by }) => by!)), venue }];
  });

type Timed = { step: Step; start: number | undefined; end: number | undefined };

/** A recipe's steps in their order, each as late as what follows it lets it be. */
const backwards = ({ recipe }: RecipeNeed, wanted: readonly Ready[], clock: Clock): Timed[] => {
  const times = new Map<Step, Timed>();
  for (const step of [...recipe.steps].reverse()) {
    const after = followers(recipe, step).map(({ step: later, least }) => {
      const from = times.get(later)!.start;
      return { by: from === undefined ? undefined : clock.back(from, least), venue: later.where === 'venue' };
    });
    const end = latestEnd(step, after.length ? after : wanted, clock);
    const start = end === undefined || step.minutes === null ? undefined : clock.back(end, step.minutes);
    times.set(step, { step, start, end });
  }
  return recipe.steps.map((step) => times.get(step)!);
};

const latestEnd = (step: Step, ready: readonly Ready[], { drive, back }: Clock): number | undefined => {
  let end = Number.POSITIVE_INFINITY;
  for (const { by, venue } of ready) {
    if (by === undefined) return undefined;
    end = Math.min(end, venue && step.where !== 'venue' ? back(by, drive) : by);
  }
  return end;
};

/** When and where the first step of a recipe starts: by then its components are there. */
const earliest = (times: readonly Timed[]): Ready => {
  let first = times[0]!;
  for (const one of times) {
    if (one.start === undefined) return { by: undefined, venue: one.step.where === 'venue' };
    if (one.start < first.start!) first = one;
  }
  return { by: first.start, venue: first.step.where === 'venue' };
};
