import { addDays } from './calendar.js';
import { type DatedStep, datedSteps, type Span } from './due.js';
import type { Event } from './facts/event.js';
import { type Facts, factsOf } from './facts/facts.js';
import type { Recipe, Step } from './facts/recipe.js';
import { recipeOf } from './lookup.js';
import type { Answer, Problem } from './problem.js';
import { noSteps } from './problems.js';
import { exact } from './quantity/amount.js';
import type { Rational } from './quantity/rational.js';
import type { Quantity } from './quantity/units.js';
import { type DishNeed, dishNeed } from './requirements.js';
import { closureOf, type LineNeed, type RecipeNeed } from './scaling.js';
import { type Station, type Stay, stationOf, stays } from './working-order.js';

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

/** Minutes somebody stands there, and how many such jobs have no minutes written, so that the sum lacks them. */
type Attended = { attended: number; untimed: number };
export type PrepStation = Stay & Attended;
/** `list` holds the same jobs as the stations, components first. */
export type PrepDay = {
  date: string;
  stations: PrepStation[];
  list: readonly Job[];
  jobs: number;
} & Attended;

type Planned = DatedStep & { need: RecipeNeed };

/** Whether work for an event is still to be done: enquiries and what is over are not. */
export const isLive = (event: Pick<Event, 'archived' | 'state'>): boolean =>
  !event.archived && (event.state === 'confirmed' || event.state === 'quoted');

/**
 * The prep list of a set of events by day and, in the order it can be worked, by station; of some days alone when they
 * are named. A dish's step is listed as many days before its service as the step may be done ahead; a component's
 * counts back from the first step of what uses it. Minutes are as written in the recipe, for whatever amount. Same step
 * and day of several events is one job.
 */
export const prepFor = (events: readonly Event[], today: Facts, span?: Span): Answer<PrepDay[]> => {
  const problems: Problem[] = [];
  const jobs = new Map<string, Job>();
  for (const event of events) {
    const facts = factsOf(event, today);
    const dated = datedSteps(event, facts, span);
    const needs = event.courses
      .flatMap(({ dishes }) => dishes)
      .filter(({ recipe }) => closureOf(recipeOf(recipe, facts), facts).some(({ key }) => dated.has(key)))
      .map((dish) => dishNeed(dish, event, facts));
    problems.push(...needs.flatMap((need) => need.problems));
    for (const planned of plan(dated, needs)) addJob(planned, event, jobs, problems);
  }
  return { value: days([...jobs.values()]), problems };
};

/** The dated steps for every use of their recipes, one recipe after the other. */
const plan = (dated: ReadonlyMap<string, DatedStep[]>, needs: readonly DishNeed[]): Planned[] => {
  const uses = new Map<string, RecipeNeed[]>([...dated.keys()].map((key) => [key, []]));
  for (const { recipes } of needs) for (const need of recipes) uses.get(need.recipe.key)?.push(need);
  return [...uses].flatMap(([key, all]) =>
    all.flatMap((need) =>
      dated.get(key)!.map(({ step, number, date, depth }) => ({ step, number, date, depth, need })),
    ),
  );
};

const addJob = (
  { need, step, number, date, depth }: Planned,
  event: Event,
  jobs: Map<string, Job>,
  problems: Problem[],
) => {
  const { recipe, factor } = need;
  if (!step) problems.push(noSteps(recipe));
  // A done event was served from the recipes of its day, which may differ from those of today.
  const own = event.served ? ` ${event.key}` : '';
  const key = `${date} ${recipe.key} ${step?.key ?? ''}${own}`;
  const before = jobs.get(key);
  if (before) return addTo(before, need, event, depth);
  const { makes, trays } = amounts(need, step, factor);
  jobs.set(key, {
    key,
    date,
    recipe,
    step,
    number,
    lines: number === 1 ? need.lines : [],
    station: stationOf(step),
    batches: factor,
    makes,
    trays,
    depth,
    shares: [{ event, batches: factor }],
    minutes: step?.minutes ?? undefined,
    useBy: recipe.keepingDays === null ? undefined : addDays(date, recipe.keepingDays),
  });
};

const addTo = (job: Job, need: RecipeNeed, event: Event, depth: number) => {
  const own = job.shares.find((share) => share.event === event);
  if (own) own.batches = plus(own.batches, need.factor);
  else job.shares.push({ event, batches: need.factor });
  job.batches = plus(job.batches, need.factor);
  job.lines = job.lines.map((line, i) => together(line, need.lines[i]!));
  job.depth = Math.max(job.depth, depth);
  Object.assign(job, amounts(need, job.step, job.batches));
};

const plus = (a: Rational | undefined, b: Rational | undefined) => a && b && a.plus(b);

const together = (a: LineNeed, b: LineNeed): LineNeed => ({
  ...a,
  amount: plus(a.amount, b.amount),
  least: plus(a.least, b.least),
  wary: a.wary ?? b.wary,
  prepared: plus(a.prepared, b.prepared),
  batches: plus(a.batches, b.batches),
  bought: a.bought && b.bought && { base: a.bought.base, value: a.bought.value.plus(b.bought.value) },
});

const amounts = ({ makes }: RecipeNeed, step: Step | undefined, batches: Rational | undefined) => {
  const one: Quantity | undefined = makes.g
    ? { value: makes.g, base: 'g' }
    : makes.ml
      ? { value: makes.ml, base: 'ml' }
      : makes.portions && { value: makes.portions, base: 'portion' };
  return {
    // None at all is not a quantity to make: nobody eats it, or it only goes in to taste.
    makes:
      batches && !batches.isZero && one ? { value: one.value.times(batches), base: one.base } : undefined,
    trays: step && batches && makes.portions && traysFor(step, makes.portions.times(batches)),
  };
};

/** Oven shelves that hold an amount of portions, rounded up to whole ones; undefined when a shelf's worth isn't known. */
export const traysFor = (step: Step, portions: Rational): number | undefined => {
  if (!step.oven || step.portionsPerShelf === null) return undefined;
  const each = exact(step.portionsPerShelf);
  return each.isZero ? undefined : Number(portions.over(each).ceil());
};

const days = (jobs: readonly Job[]): PrepDay[] => {
  const byDate = new Map<string, Job[]>();
  for (const job of jobs) {
    const ofDay = byDate.get(job.date);
    if (ofDay) ofDay.push(job);
    else byDate.set(job.date, [job]);
  }
  const dates = [...byDate].sort(([a], [b]) => byKey(a, b));
  return dates.map(([date, jobs]) => {
    const ofDay = jobs.sort(
      (a, b) => b.depth - a.depth || byKey(a.recipe.key, b.recipe.key) || a.number - b.number,
    );
    const { attended, untimed } = timesOf(ofDay);
    let inOrder: PrepStation[] | undefined;
    return {
      date,
      // A week only counts the jobs of most of its days.
      get stations() {
        inOrder ??= stays(ofDay).map((stay) => ({ ...stay, ...timesOf(stay.jobs) }));
        return inOrder;
      },
      list: ofDay,
      jobs: ofDay.length,
      attended,
      untimed,
    };
  });
};

const byKey = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

const timesOf = (jobs: readonly Job[]): Attended => {
  const hands = jobs.filter(({ step }) => step?.attended ?? true);
  return {
    attended: hands.reduce((total, { minutes }) => total + (minutes ?? 0), 0),
    untimed: hands.filter(({ minutes }) => minutes === undefined).length,
  };
};
