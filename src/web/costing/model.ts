import type { FastifyRequest } from 'fastify';
import type { Answer, Problem } from '../../core/problem.js';
import { costShares } from '../../core/sheets/cost-shares.js';
import { type Costing, costingSheet } from '../../core/sheets/costing.js';
import { printedNow } from '../coming.js';
import { addressesOf } from '../events/addresses.js';
import { costShown } from '../events/dishes.js';
import { type EventHead, headOf, type OneEvent } from '../events/event.js';
import { formatFor } from '../format.js';
import type { Html } from '../html.js';
import { withMend } from '../mends.js';
import { type CostCourse, type CostIngredient, courseRows, gutterCost, ingredientRows } from './rows.js';

export type CostingPage = {
  head: EventHead;
  at: ReturnType<typeof addressesOf>;
  guests: string;
  courses: CostCourse[];
  ingredients: CostIngredient[];
  dishes: string;
  aGuest: Html;
  total: string;
  /** In minor units, for drawing. */
  scale: number;
  complete: boolean;
  /** What the total lacks, each with where it is mended. */
  missing: ReturnType<typeof withMend>[];
  check: ReturnType<typeof withMend>[];
  foot: string[];
  paper: { left: string; middle: string; right: string; foot: string };
};

/** Everything that stands on the costing page of an event. */
export const costingPage = async (
  request: FastifyRequest,
  one: OneEvent,
  answer: Answer<Costing>,
): Promise<CostingPage> => {
  const { event, facts, cost } = answer.value;
  const f = formatFor(facts.kitchen);
  const guests = f.count(cost.guests, 'guest');
  const weighing = (wanted: (problem: Problem) => boolean) => answer.problems.filter(wanted).map(withMend);
  return {
    head: await headOf(request, one),
    at: addressesOf(event.key),
    guests,
    courses: courseRows(costShares(cost), answer.value),
    ingredients: ingredientRows(answer.value),
    dishes: f.count(
      cost.courses.reduce((n, { dishes }) => n + dishes.length, 0),
      'dish',
      'dishes',
    ),
    aGuest: gutterCost(cost.aGuest, cost.complete, f),
    total: costShown(cost.total, cost.complete, f),
    scale: cost.total,
    complete: cost.complete,
    missing: weighing(({ weight }) => weight !== 'check'),
    check: weighing(({ weight }) => weight === 'check'),
    foot: costingSheet(answer).foot,
    paper: {
      left: facts.kitchen.name,
      middle: `${event.name}, ${f.dateYear(event.date)}, ${guests}`,
      right: 'Food cost',
      foot: `${printedNow(request)} Void when guests, a menu, a recipe or a price change.`,
    },
  };
};
