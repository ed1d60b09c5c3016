import { serviceMinutes } from './calendar.js';
import type { Course, Event } from './facts/event.js';
import type { Facts } from './facts/facts.js';
import type { Recipe, Step } from './facts/recipe.js';
import type { DishNeed } from './requirements.js';
import type { RecipeNeed } from './scaling.js';

/** A step of the day itself, in minutes from midnight of the event's day, at the latest that service allows. */
export type LatestStep = {
  need: RecipeNeed;
  step: Step;
  start: number;
  end: number;
};

/**
 * The latest each step of a dish's day may start and end for its course's service time, backwards through its steps
 * and components, as if ovens and hands had no limit (critical path method, backward pass). A step without minutes
 * leaves everything before it open, so those steps are absent.
 */
export const latestSteps = (dish: DishNeed, course: Course, event: Event, facts: Facts): LatestStep[] => {
  const service = serviceMinutes(course) - driveTo(event, facts);
  const due = new Map<string, number | undefined>([[dish.recipe.key, service]]);
  const steps: LatestStep[] = [];
  for (const need of dish.recipes) {
    const done = backwards(need, due.get(need.recipe.key));
    steps.push(...done);
    const first = need.recipe.steps[0];
    const opening = first ? done.find(({ step }) => step === first)?.start : due.get(need.recipe.key);
    for (const { component } of need.lines) {
      if (!component) continue;
      const before = due.has(component.key) ? due.get(component.key) : Number.POSITIVE_INFINITY;
      due.set(
        component.key,
        before === undefined || opening === undefined ? undefined : Math.min(before, opening),
      );
    }
  }
  return steps;
};

/** Work at home ends before the drive; a venue without a stated drive counts as next door. */
const driveTo = (event: Event, facts: Facts): number => facts.places.get(event.place)?.drive ?? 0;

const backwards = (need: RecipeNeed, due: number | undefined): LatestStep[] => {
  const { recipe } = need;
  const start = new Map<string, number | undefined>();
  const latest: LatestStep[] = [];
  for (const step of [...recipe.steps].reverse()) {
    const end = latestEnd(step, recipe, due, start);
    const known = end !== undefined && step.minutes !== null ? end - step.minutes : undefined;
    start.set(step.key, known);
    if (known !== undefined && step.daysAhead === 0) latest.unshift({ need, step, start: known, end: end! });
  }
  return latest;
};

const latestEnd = (
  step: Step,
  recipe: Recipe,
  due: number | undefined,
  start: ReadonlyMap<string, number | undefined>,
): number | undefined => {
  let end = due;
  for (const [i, later] of recipe.steps.entries()) {
    const named = later.after.find((link) => link.step === step.key);
    const next = later.after.length === 0 && recipe.steps[i - 1] === step;
    if (!named && !next) continue;
    const from = start.get(later.key);
    if (from === undefined) return undefined;
    end = end === undefined ? undefined : Math.min(end, from - (named?.least ?? 0));
  }
  return end;
};

/** When work on a dish starts on the day, at the latest, in minutes from midnight; undefined where minutes are missing. */
export const latestStart = (
  dish: DishNeed,
  course: Course,
  event: Event,
  facts: Facts,
): number | undefined => {
  const steps = latestSteps(dish, course, event, facts);
  const asked = dish.recipes.flatMap(({ recipe }) => recipe.steps).filter((step) => step.daysAhead === 0);
  if (steps.length === 0 || steps.length < asked.length) return undefined;
  return Math.min(...steps.map((step) => step.start));
};
