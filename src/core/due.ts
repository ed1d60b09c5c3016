import { addDays, servedOn } from './calendar.js';
import type { Event } from './facts/event.js';
import type { Facts } from './facts/facts.js';
import type { Recipe, Step } from './facts/recipe.js';
import { once, recipeOf } from './lookup.js';
import { closure } from './scaling.js';

export type Follower = { step: Step; least: number };

const followersKept = new WeakMap<Recipe, Map<Step, Follower[]>>();

/** The steps of a recipe that come after one of its steps: those that name it, and the next where that names none. */
export const followers = (recipe: Recipe, step: Step): readonly Follower[] => {
  let known = followersKept.get(recipe);
  if (!known) {
    known = new Map(recipe.steps.map((one, i) => [one, after(recipe, i)]));
    followersKept.set(recipe, known);
  }
  return known.get(step) ?? [];
};

const after = ({ steps }: Recipe, place: number): Follower[] =>
  steps.flatMap((later, i) => {
    const named = later.after.find((link) => link.step === steps[place]!.key);
    if (named) return [{ step: later, least: named.least }];
    return i === place + 1 && later.after.length === 0 ? [{ step: later, least: 0 }] : [];
  });

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
export const dueDays = once((event: Event, facts: Facts): DueDays => {
  const due = new Map<string, string>();
  const use = (key: string, day: string) => {
    const before = due.get(key);
    if (!before || day < before) due.set(key, day);
  };
  for (const course of event.courses)
    for (const { recipe } of course.dishes) use(recipe, servedOn(event, course));
  const order = closure(
    [...due.keys()].map((key) => recipeOf(key, facts)),
    facts,
  );
  for (const recipe of order) {
    const day = begun(recipe, due.get(recipe.key)!);
    for (const { item } of recipe.lines) if ('component' in item) use(item.component, day);
  }
  return { order, due };
});

/** Days that are asked about, both included. */
export type Span = { from: string; to: string };

/** A step with the day it is done, undefined for a recipe without steps; depth is the recipe's place in the order. */
export type DatedStep = { step: Step | undefined; number: number; date: string; depth: number };

/**
 * When each step of an event's recipes is done, by recipe: one day a step, early enough for every use of it. Where days
 * are named, the steps of those days alone.
 */
export const datedSteps = (event: Event, facts: Facts, span?: Span): Map<string, DatedStep[]> => {
  const { order, due } = dueDays(event, facts);
  const dated = new Map<string, DatedStep[]>();
  for (const [depth, recipe] of order.entries()) {
    const steps = stepsOf(recipe, due.get(recipe.key)!, depth);
    const asked = span ? steps.filter(({ date }) => span.from <= date && date <= span.to) : steps;
    if (asked.length > 0) dated.set(recipe.key, asked);
  }
  return dated;
};

/** A recipe's steps with their days for the day it is due, or the recipe whole on that day where it has no steps. */
const stepsOf = (recipe: Recipe, due: string, depth: number): DatedStep[] => {
  if (recipe.steps.length === 0) return [{ step: undefined, number: 1, date: due, depth }];
  const ahead = daysAheadOf(recipe);
  return recipe.steps.map((step, i) => ({ step, number: i + 1, date: addDays(due, -ahead[i]!), depth }));
};
