import { addDays, servedOn } from './calendar.js';
import type { Event } from './facts/event.js';
import { type Facts, factsOf } from './facts/facts.js';
import type { Recipe, Step } from './facts/recipe.js';
import type { Answer, Problem } from './problem.js';
import { noSteps } from './problems.js';
import { exact } from './quantity/amount.js';
import type { Rational } from './quantity/rational.js';
import type { Quantity } from './quantity/units.js';
import { type CourseNeed, requirementsOf } from './requirements.js';
import { closure, type LineNeed, type RecipeNeed } from './scaling.js';

export const stations = ['Bench', 'Stove', 'Oven', 'Fridge'] as const;
export type Station = (typeof stations)[number];

/** Part of a job that one event asks for. */
export type JobShare = { event: Event; batches: Rational | undefined };

/** One step of one recipe on one day, for all events that need it then. */
export type Job = {
  key: string;
  date: string;
  station: Station;
  recipe: Recipe;
  /** undefined when the recipe has no steps written. */
  step: Step | undefined;
  number: number;
  batches: Rational | undefined;
  makes: Quantity | undefined;
  shares: JobShare[];
  /** The lines to weigh out, on a recipe's first step only. */
  lines: LineNeed[];
  /** Oven shelves' worth of the amount, whole; undefined where the recipe doesn't say what a shelf holds. */
  trays: number | undefined;
  minutes: number | undefined;
  useBy: string | undefined;
  /** How far below the dish it stands; a component is always deeper than what uses it. */
  depth: number;
};

export type PrepStation = { station: Station; jobs: Job[]; attended: number };
export type PrepDay = { date: string; stations: PrepStation[]; jobs: number; attended: number };

type Planned = { need: RecipeNeed; step: Step | undefined; number: number; date: string; depth: number };

/** Whether work for an event is still to be done: enquiries and what is over are not. */
export const isLive = (event: Event): boolean =>
  !event.archived && (event.state === 'confirmed' || event.state === 'quoted');

/**
 * The prep list of a set of events by day and station, components before what uses them. A dish's step is listed as
 * many days before its service as the step may be done ahead; a component's counts back from the first step of what
 * uses it. Minutes are as written in the recipe, for whatever amount. Same step and day of several events is one job.
 */
export const prepFor = (events: readonly Event[], today: Facts): Answer<PrepDay[]> => {
  const problems: Problem[] = [];
  const jobs = new Map<string, Job>();
  for (const event of events) {
    const facts = factsOf(event, today);
    const needs = requirementsOf(event, facts);
    problems.push(...needs.flatMap(({ dishes }) => dishes.flatMap((dish) => dish.problems)));
    for (const planned of plan(event, needs, facts)) addJob(planned, event, jobs, problems);
  }
  return { value: days([...jobs.values()]), problems };
};

/** When each step of an event's dishes and components is done: one day a step, early enough for every use of it. */
const plan = (event: Event, needs: readonly CourseNeed[], facts: Facts): Planned[] => {
  const usedOn = new Map<string, string>();
  const use = (key: string, day: string) => {
    const before = usedOn.get(key);
    if (!before || day < before) usedOn.set(key, day);
  };
  for (const { course, dishes } of needs)
    for (const { recipe } of dishes) use(recipe.key, servedOn(event, course));
  const dishes = needs.flatMap((course) => course.dishes);
  const all = closure([...new Set(dishes.map(({ recipe }) => recipe))], facts);
  return all.flatMap((recipe, depth) => {
    const dated = datedSteps(recipe, usedOn.get(recipe.key)!);
    for (const { item } of recipe.lines) if ('component' in item) use(item.component, dated[0]!.date);
    const uses = dishes.flatMap((dish) => dish.recipes.filter((need) => need.recipe === recipe));
    return uses.flatMap((need) => dated.map((step) => ({ ...step, need, depth })));
  });
};

/** A recipe's steps with their days for a day of use, or the recipe whole on that day where it has no steps. */
const datedSteps = (recipe: Recipe, due: string): Pick<Planned, 'step' | 'number' | 'date'>[] => {
  const steps = recipe.steps.map((step, i) => ({ step, number: i + 1, date: addDays(due, -step.daysAhead) }));
  // A step can't come after the day of the step that follows it.
  for (let i = steps.length - 2; i >= 0; i--)
    if (steps[i]!.date > steps[i + 1]!.date) steps[i]!.date = steps[i + 1]!.date;
  return steps.length ? steps : [{ step: undefined, number: 1, date: due }];
};

const addJob = (
  { need, step, number, date, depth }: Planned,
  event: Event,
  jobs: Map<string, Job>,
  problems: Problem[],
) => {
  const { recipe, factor } = need;
  if (!step) problems.push(noSteps(recipe));
  const key = `${date} ${recipe.key} ${step?.key ?? ''}`;
  const before = jobs.get(key);
  if (!before) {
    const lines = number === 1 ? need.lines : [];
    jobs.set(key, {
      ...amounts(need, step, factor),
      key,
      date,
      recipe,
      step,
      number,
      lines,
      station: stationOf(step),
      batches: factor,
      depth,
      shares: [{ event, batches: factor }],
      minutes: step?.minutes ?? undefined,
      useBy: recipe.keepingDays === null ? undefined : addDays(date, recipe.keepingDays),
    });
    return;
  }
  const batches = before.batches && factor && before.batches.plus(factor);
  const own = before.shares.find((share) => share.event === event);
  if (own) own.batches = own.batches && factor && own.batches.plus(factor);
  else before.shares.push({ event, batches: factor });
  const lines = before.lines.map((line, i) => together(line, need.lines[i]!));
  Object.assign(before, amounts(need, step, batches), {
    batches,
    lines,
    depth: Math.max(before.depth, depth),
  });
};

const together = (a: LineNeed, b: LineNeed): LineNeed => ({
  ...a,
  amount: a.amount && b.amount && a.amount.plus(b.amount),
  prepared: a.prepared && b.prepared && a.prepared.plus(b.prepared),
  bought: a.bought && b.bought && { base: a.bought.base, value: a.bought.value.plus(b.bought.value) },
});

const amounts = ({ makes }: RecipeNeed, step: Step | undefined, batches: Rational | undefined) => {
  const one: Quantity | undefined = makes.g
    ? { value: makes.g, base: 'g' }
    : makes.ml
      ? { value: makes.ml, base: 'ml' }
      : makes.portions && { value: makes.portions, base: 'portion' };
  return {
    makes: batches && one && { value: one.value.times(batches), base: one.base },
    trays: step && batches && makes.portions && traysFor(step, makes.portions.times(batches)),
  };
};

/** Oven shelves that hold an amount of portions, rounded up to whole ones; undefined when a shelf's worth isn't known. */
export const traysFor = (step: Step, portions: Rational): number | undefined => {
  if (!step.oven || step.portionsPerShelf === null) return undefined;
  const each = exact(step.portionsPerShelf);
  return each.isZero ? undefined : Number(portions.over(each).ceil());
};

const stationOf = (step: Step | undefined): Station => {
  if (step?.oven) return 'Oven';
  if (step && step.rings > 0) return 'Stove';
  return step && step.fridgeShelves > 0 && !step.attended ? 'Fridge' : 'Bench';
};

const days = (jobs: Job[]): PrepDay[] => {
  const dates = [...new Set(jobs.map((job) => job.date))].sort();
  return dates.map((date) => {
    const ofDay = jobs
      .filter((job) => job.date === date)
      .sort((a, b) => b.depth - a.depth || a.number - b.number);
    const byStation = stations
      .map((station) => ({ station, jobs: ofDay.filter((job) => job.station === station) }))
      .filter((group) => group.jobs.length > 0)
      .map((group) => ({ ...group, attended: attended(group.jobs) }));
    return { date, stations: byStation, jobs: ofDay.length, attended: attended(ofDay) };
  });
};

const attended = (jobs: readonly Job[]): number =>
  jobs.reduce((total, job) => total + (job.step?.attended ? (job.minutes ?? 0) : 0), 0);
