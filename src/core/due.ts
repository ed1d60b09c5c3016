import { addDays, servedOn } from './calendar.js';
import type { Event } from './facts/event.js';
import type { Facts } from './facts/facts.js';
import type { Recipe, Step } from './facts/recipe.js';
import type { CourseNeed } from './requirements.js';
import { closure } from './scaling.js';

/** The steps of a recipe that come after one of its steps: those that name it, and the next where that names none. */
export const followers = (recipe: Recipe, step: Step): { step: Step; least: number }[] => {
  const next = recipe.steps[recipe.steps.indexOf(step) + 1];
  return recipe.steps.flatMap((later) => {
    const named = later.after.find((link) => link.step === step.key);
    if (named) return [{ step: later, least: named.least }];
    return later === next && later.after.length === 0 ? [{ step: later, least: 0 }] : [];
  });
};

const kept = new WeakMap<Recipe, number[]>();

/** Days before its use on which each step is done: as many as it may be, and no fewer than any step that follows it. */
export const daysAheadOf = (recipe: Recipe): readonly number[] => {
  const known = kept.get(recipe);
  if (known) return known;
  const days = recipe.steps.map((step) => step.daysAhead);
  for (const [i, step] of [...recipe.steps.entries()].reverse())
    for (const { step: later } of followers(recipe, step))
      days[i] = Math.max(days[i]!, days[recipe.steps.indexOf(later)]!);
  kept.set(recipe, days);
  return days;
};

/** The day a recipe due on a day is begun. */
const begun = (recipe: Recipe, due: string): string => addDays(due, -Math.max(0, ...daysAheadOf(recipe)));

export type DueDays = {
  /** Every recipe of an event, each before what it uses. */
  order: Recipe[];
  /** The day by which each is done, by key. */
  due: ReadonlyMap<string, string>;
};

/**
 * The day by which each recipe of an event is done: a dish by its service, a component by the day that the first of
 * all that use it is begun. One event makes a recipe on one day, early enough for every use of it.
 */
export const dueDays = (event: Event, needs: readonly CourseNeed[], facts: Facts): DueDays => {
  const due = new Map<string, string>();
  const use = (key: string, day: string) => {
    const before = due.get(key);
    if (!before || day < before) due.set(key, day);
  };
  for (const { course, dishes } of needs)
    for (const { recipe } of dishes) use(recipe.key, servedOn(event, course));
  const roots = new Set(needs.flatMap(({ dishes }) => dishes.map(({ recipe }) => recipe)));
  const order = closure([...roots], facts);
  for (const recipe of order) {
    const day = begun(recipe, due.get(recipe.key)!);
    for (const { item } of recipe.lines) if ('component' in item) use(item.component, day);
  }
  return { order, due };
};
