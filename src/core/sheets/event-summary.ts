import { allergensOf, type Cell } from '../allergens.js';
import { checkYield, linesWeight } from '../batch.js';
import { servedOn } from '../calendar.js';
import { costOfEvent, type DishCost, type EventCost } from '../costing.js';
import { type Coverage, coverageOf, coverageProblems } from '../coverage.js';
import type { Course, Event } from '../facts/event.js';
import { type Facts, factsOf } from '../facts/facts.js';
import { type DishDay, driveProblems, latestSteps } from '../latest.js';
import { toMinor } from '../money.js';
import { ovenAsks, ovenProblems } from '../ovens.js';
import { traysFor } from '../prep.js';
import type { Answer } from '../problem.js';
import { Rational } from '../quantity/rational.js';
import { type DishNeed, headCount, requirementsOf, worstFirst } from '../requirements.js';
import { isOpen, unreadIn } from './allergen-matrix.js';
import { cautions, conventions, decimalMoney, type Sheet } from './sheet.js';

export type DishSummary = {
  need: DishNeed;
  cost: DishCost;
  allergens: Cell[];
  /** Minor units, halves up; undefined without portions. */
  aPortion: number | undefined;
  trays: number | undefined;
  /** Minutes from midnight of the event's day at the latest; undefined when it is all done before or minutes are missing. */
  starts: number | undefined;
  /** Prepared grams for each guest at the table, exact; undefined when a weight is missing. */
  gramsAGuest: Rational | undefined;
};

export type CourseSummary = { course: Course; servedOn: string; dishes: DishSummary[] };

export type EventSummary = {
  event: Event;
  facts: Facts;
  courses: CourseSummary[];
  cost: EventCost;
  coverage: Coverage;
  gramsAGuest: Rational | undefined;
};

/** One event on a page: what is made of each dish, what it costs and holds, who is left out, what must be settled. */
export const eventSummary = (event: Event, today: Facts): Answer<EventSummary> => {
  const facts = factsOf(event, today);
  const needs = requirementsOf(event, facts);
  const { value: cost, problems: found } = costOfEvent(event, facts, needs);
  const coverage = coverageOf(event, facts);
  const days = latestSteps(event, needs, facts);
  const problems = [
    ...coverageProblems(event, coverage),
    ...driveProblems(event, days, facts),
    ...ovenProblems(event, ovenAsks(event, days, facts), facts),
    ...found,
  ];
  const work = new Map(days.map((day) => [day.dish, day]));
  const courses = needs.map(({ course, dishes }, c) => ({
    course,
    servedOn: servedOn(event, course),
    dishes: dishes.map((need, d) =>
      dishSummary(need, cost.courses[c]!.dishes[d]!, work.get(need)!, event, facts),
    ),
  }));
  const all = courses.flatMap(({ dishes }) => dishes);
  const recipes = new Set(all.flatMap(({ need }) => need.recipes.map(({ recipe }) => recipe)));
  for (const recipe of recipes) problems.push(...checkYield(recipe, facts));
  problems.push(...unreadIn(all.map(({ need, allergens }) => ({ recipe: need.recipe, cells: allergens }))));
  const gramsAGuest = total(all.map((dish) => dish.gramsAGuest));
  return { value: { event, facts, courses, cost, coverage, gramsAGuest }, problems: worstFirst(problems) };
};

const dishSummary = (
  need: DishNeed,
  cost: DishCost,
  day: DishDay,
  event: Event,
  facts: Facts,
): DishSummary => {
  const { portions, recipe } = need;
  const { factor, makes } = need.recipes[0]!;
  const made = factor && makes.portions?.times(factor);
  const trays = recipe.steps.map((step) => made && traysFor(step, made)).filter((n) => n !== undefined);
  const heads = headCount(event);
  return {
    need,
    cost,
    allergens: allergensOf(recipe, facts),
    aPortion: portions.isZero ? undefined : toMinor(cost.exact.over(portions)),
    trays: trays.length ? Math.max(...trays) : undefined,
    starts: day.start,
    gramsAGuest: heads > 0 ? gramsOf(need, facts)?.over(Rational.of(heads)) : undefined,
  };
};

/** Grams of a whole dish as served; where no weight is stated, as its lines go in. */
const gramsOf = ({ portion, portions, recipe, recipes }: DishNeed, facts: Facts): Rational | undefined => {
  if (portion?.base === 'g') return portion.value.times(portions);
  const { factor, makes } = recipes[0]!;
  return factor && (makes.g ?? linesWeight(recipe, facts))?.times(factor);
};

const total = (parts: (Rational | undefined)[]): Rational | undefined => {
  let whole = Rational.zero;
  for (const part of parts) {
    if (!part) return undefined;
    whole = whole.plus(part);
  }
  return whole;
};

/** The event summary as tables. */
export const eventSummarySheet = ({ value, problems }: Answer<EventSummary>): Sheet => {
  const { event, facts, courses, cost } = value;
  const { currency } = facts.kitchen;
  const rows = courses.flatMap(({ course, dishes }) =>
    dishes.map(({ need, cost: dish, allergens, aPortion }) => ({
      course: course.name,
      time: course.time,
      dish: need.recipe.name,
      portions: need.portions.toString(),
      portion: need.portion?.value.toString() ?? '',
      unit: need.portion?.base ?? '',
      cost: dish.complete ? decimalMoney(dish.cost, currency) : '',
      costKnown: decimalMoney(dish.cost, currency),
      aPortion: dish.complete && aPortion !== undefined ? decimalMoney(aPortion, currency) : '',
      contains: named(allergens, 'contains'),
      mayContain: named(allergens, 'may'),
      notKnown: allergens
        .filter(isOpen)
        .map((cell) => cell.item.short)
        .join('; '),
    })),
  );
  return {
    sheet: 'event-summary',
    title: event.name,
    about: {
      event: event.key,
      date: event.date,
      guests: String(cost.guests),
      cost: cost.complete ? decimalMoney(cost.total, currency) : '',
      costKnown: decimalMoney(cost.total, currency),
      costAGuest: cost.complete && cost.aGuest !== undefined ? decimalMoney(cost.aGuest, currency) : '',
      currency,
      complete: String(cost.complete),
    },
    tables: [
      {
        name: 'menu',
        title: 'Menu',
        columns: [
          { key: 'course', label: 'Course' },
          { key: 'time', label: 'Served' },
          { key: 'dish', label: 'Dish' },
          { key: 'portions', label: 'Portions' },
          { key: 'portion', label: 'Each' },
          { key: 'unit', label: 'Unit' },
          { key: 'cost', label: 'Cost', unit: currency },
          { key: 'costKnown', label: 'Cost known so far', unit: currency },
          { key: 'aPortion', label: 'A portion', unit: currency },
          { key: 'contains', label: 'Contains' },
          { key: 'mayContain', label: 'May contain' },
          { key: 'notKnown', label: 'Not known: treat as contains' },
        ],
        rows,
      },
    ],
    problems,
    foot: [conventions.portions, conventions.prices, cautions.allergens],
  };
};

const named = (cells: Cell[], state: Cell['state']): string =>
  cells
    .filter((cell) => cell.state === state)
    .map((cell) => cell.item.short)
    .join('; ');
