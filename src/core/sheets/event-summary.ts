import { allergensOf, type Cell } from '../allergens.js';
import { linesWeight } from '../batch.js';
import { servedOn } from '../calendar.js';
import { costOfEvent, type DishCost, type EventCost } from '../costing.js';
import type { Coverage } from '../coverage.js';
import type { Course, Event } from '../facts/event.js';
import type { Facts } from '../facts/facts.js';
import type { DishDay } from '../latest.js';
import { toMinor } from '../money.js';
import { traysFor } from '../prep.js';
import type { Answer } from '../problem.js';
import { Rational } from '../quantity/rational.js';
import { type DishNeed, headCount } from '../requirements.js';
import { aboutCost } from './about-cost.js';
import { isOpen } from './allergen-matrix.js';
import { toSettle, workOut } from './settle.js';
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
  const worked = workOut(event, today);
  const { facts, needs, coverage, days } = worked;
  const { value: cost } = costOfEvent(event, facts, needs);
  const work = new Map(days.map((day) => [day.dish, day]));
  const courses = needs.map(({ course, dishes }, c) => ({
    course,
    servedOn: servedOn(event, course),
    dishes: dishes.map((need, d) =>
      dishSummary(need, cost.courses[c]!.dishes[d]!, work.get(need)!, event, facts),
    ),
  }));
  const all = courses.flatMap(({ dishes }) => dishes);
  const gramsAGuest = total(all.map((dish) => dish.gramsAGuest));
  return { value: { event, facts, courses, cost, coverage, gramsAGuest }, problems: toSettle(worked) };
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
const gramsOf = ({ recipe, recipes }: DishNeed, facts: Facts): Rational | undefined => {
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
    about: aboutCost(event, cost, currency),
    get tables() {
      return [
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
      ];
    },
    problems,
    foot: [conventions.portions, conventions.prices, cautions.allergens],
  };
};

const named = (cells: Cell[], state: Cell['state']): string =>
  cells
    .filter((cell) => cell.state === state)
    .map((cell) => cell.item.short)
    .join('; ');
