import { allergensOf, type Cell } from '../allergens.js';
import { unweighed } from '../batch.js';
import { servedOn } from '../calendar.js';
import { costOfEvent, type DishCost, type EventCost } from '../costing.js';
import type { Coverage } from '../coverage.js';
import type { Course, Event } from '../facts/event.js';
import type { Facts } from '../facts/facts.js';
import type { DishDay } from '../latest.js';
import { toMinor } from '../money.js';
import { traysFor } from '../prep.js';
import type { Answer, Subject } from '../problem.js';
import { ofIngredient, ofRecipe } from '../problems.js';
import { Rational } from '../quantity/rational.js';
import { type DishNeed, headCount } from '../requirements.js';
import { toSettle, workOut } from './settle.js';

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
  /** What is without a weight, so that nobody can say what a guest's food weighs. */
  unweighed: Subject[];
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
  const value = { event, facts, courses, cost, coverage, gramsAGuest, unweighed: unweighedIn(all, facts) };
  return { value, problems: toSettle(worked) };
};

const unweighedIn = (dishes: readonly DishSummary[], facts: Facts): Subject[] => {
  const open = dishes
    .filter(({ gramsAGuest }) => !gramsAGuest)
    .map(({ need }) => unweighed(need.recipe, facts));
  return [
    ...[...new Set(open.flatMap(({ recipes }) => recipes))].map((one) => ofRecipe(one, 'yield')),
    ...[...new Set(open.flatMap(({ ingredients }) => ingredients))].map((one) =>
      ofIngredient(one, 'weights'),
    ),
  ];
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
    gramsAGuest: heads > 0 ? gramsOf(need)?.over(Rational.of(heads)) : undefined,
  };
};

/** Grams of a whole dish as served; where no weight is stated, as its lines go in. */
const gramsOf = ({ recipes }: DishNeed): Rational | undefined => {
  const { factor, makes, lines } = recipes[0]!;
  if (factor && makes.g) return makes.g.times(factor);
  const measured = lines.filter(({ line }) => line.amount !== null);
  return measured.length > 0 ? total(measured.map(({ prepared }) => prepared)) : undefined;
};

const total = (parts: (Rational | undefined)[]): Rational | undefined => {
  let whole = Rational.zero;
  for (const part of parts) {
    if (!part) return undefined;
    whole = whole.plus(part);
  }
  return whole;
};
