import type { WorkHours } from '../facts/cost-line.js';
import type { Event } from '../facts/event.js';
import type { Facts } from '../facts/facts.js';
import type { Recipe, Step } from '../facts/recipe.js';
import { traysFor } from '../prep.js';
import type { Problem } from '../problem.js';
import { Rational } from '../quantity/rational.js';
import type { DishNeed } from '../requirements.js';
import type { RecipeNeed } from '../scaling.js';
import { noDriveCost, noMinutes, noWork } from './problems.js';

/** Hours as far as they are known; not complete where a recipe, step or drive leaves some open. */
export type Work = { hours: Rational; complete: boolean; problems: Problem[] };

/** What an event makes of one recipe over all its dishes, exact; undefined where a use of it can't be worked out. */
export type Made = { recipe: Recipe; makes: RecipeNeed['makes']; batches: Rational | undefined };

/** Every recipe of an event's dishes and components with all its uses together. */
export const madeOf = (needs: readonly DishNeed[]): Made[] => {
  const made = new Map<string, Made>();
  for (const { recipe, makes, factor } of needs.flatMap(({ recipes }) => recipes)) {
    const before = made.get(recipe.key);
    if (!before) made.set(recipe.key, { recipe, makes, batches: factor });
    else before.batches = before.batches && factor && before.batches.plus(factor);
  }
  return [...made.values()];
};

const sixty = Rational.of(60);
const inHours = (minutes: number): Rational => Rational.of(minutes).over(sixty);

/**
 * Hours that follow from the event, exact. The minutes of a step stand for one batch, and each batch begun of a recipe
 * over the whole event takes them again: cooking counts those that somebody stands there, rings those of every ring.
 * An oven counts each load; where a shelf's worth or the oven's shelves aren't known, a batch is a load.
 */
export const workOf = (of: WorkHours, event: Event, made: readonly Made[], facts: Facts): Work =>
  of === 'driving' ? drivingOf(event, facts) : stepsOf(of, event, made, facts);

const drivingOf = (event: Event, facts: Facts): Work => {
  const place = facts.places.get(event.place);
  if (!place || place.kind === 'home') return { hours: Rational.zero, complete: true, problems: [] };
  if (place.drive === null) return { hours: Rational.zero, complete: false, problems: [noDriveCost(place)] };
  return { hours: inHours(2 * place.drive), complete: true, problems: [] };
};

type OfSteps = Exclude<WorkHours, 'driving'>;

const stepsOf = (of: OfSteps, event: Event, all: readonly Made[], facts: Facts): Work => {
  const problems: Problem[] = [];
  let complete = true;
  let minutes = 0;
  for (const made of all) {
    const { recipe, batches } = made;
    if (batches?.isZero) continue;
    if (recipe.steps.length === 0) problems.push(noWork(recipe, of));
    if (!batches) complete = false;
    const begun = Number(batches?.ceil() ?? 0n);
    for (const step of recipe.steps) {
      const times = timesOf(of, step, begun, made, event, facts);
      if (times === 0) continue;
      if (step.minutes === null) problems.push(noMinutes(recipe, step, of));
      else minutes += step.minutes * times;
    }
  }
  return { hours: inHours(minutes), complete: complete && problems.length === 0, problems };
};

/** How many times over a step's minutes count. */
const timesOf = (of: OfSteps, step: Step, begun: number, made: Made, event: Event, facts: Facts): number => {
  if (of === 'cooking') return step.attended ? begun : 0;
  if (of === 'rings') return step.rings * begun;
  return step.oven ? (loadsOf(step, made, event, facts) ?? begun) : 0;
};

/** Oven loads of a step: its shelves' worth over the shelves of the roomiest oven that reaches its heat. */
const loadsOf = (step: Step, { makes, batches }: Made, event: Event, facts: Facts): number | undefined => {
  const trays = batches && makes.portions && traysFor(step, makes.portions.times(batches));
  const shelves = shelvesFor(step, event, facts);
  return trays === undefined || shelves === undefined ? undefined : Math.ceil(trays / shelves);
};

const shelvesFor = (step: Step, event: Event, facts: Facts): number | undefined => {
  const home = [...facts.places.values()].find(({ kind }) => kind === 'home');
  const place = step.where === 'venue' ? facts.places.get(event.place) : home;
  const { heat, tolerance } = step.oven!;
  const reach = (place?.ovens ?? []).filter(
    ({ coolest, hottest }) => heat + tolerance >= coolest && heat - tolerance <= hottest,
  );
  return reach.length > 0 ? Math.max(...reach.map(({ shelves }) => shelves)) : undefined;
};
