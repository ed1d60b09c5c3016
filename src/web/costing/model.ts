import type { FastifyRequest } from 'fastify';
import type { Event } from '../../core/facts/event.js';
import type { Problem } from '../../core/problem.js';
import { worstFirst } from '../../core/requirements.js';
import { buildUp } from '../../core/sheets/build-up.js';
import { buildUpSheet, viewNames } from '../../core/sheets/build-up-sheet.js';
import { costShares } from '../../core/sheets/cost-shares.js';
import { costing } from '../../core/sheets/costing.js';
import { foodInView } from '../../core/sheets/food-in-view.js';
import type { Sheet } from '../../core/sheets/sheet.js';
import { printedNow } from '../coming.js';
import { addressesOf } from '../events/addresses.js';
import { costShown } from '../events/dishes.js';
import { type EventHead, headOf, type OneEvent } from '../events/event.js';
import { formatFor } from '../format.js';
import { withMend } from '../mends.js';
import { type CurveModel, curveModel } from './curve.js';
import { type InView, nameOfView, withView } from './in-view.js';
import { type PackRow, packRows } from './packs.js';
import { type PriceBox, priceBox } from './price-box.js';
import { type Quoted, quotedFor } from './quoted.js';
import { type CostCourse, type CostIngredient, courseRows, ingredientRows } from './rows.js';
import { type Ladder, ladderOf } from './rungs.js';
import { type ViewLink, viewLinks } from './view-links.js';

export type CostingPage = {
  head: EventHead;
  at: ReturnType<typeof addressesOf>;
  guests: string;
  /** What the address says of the view, and the ways to look at it. */
  view: string;
  /** "?view=bought", for the links to the same sheet. */
  query: string;
  viewName: string;
  views: ViewLink[];
  /** The events that packs are bought for together with this one. */
  together: { name: string; href: string }[];
  ladder: Ladder;
  price: PriceBox;
  quoted: Quoted | undefined;
  /** What one guest costs over a range of head-counts. */
  curve: CurveModel;
  groups: { name: string; label: string }[];
  unit: string;
  /** true when the event has costs beside its food. */
  costed: boolean;
  /** true while there is no dish, so that no food is counted. */
  bare: boolean;
  courses: CostCourse[];
  ingredients: CostIngredient[];
  packs: PackRow[];
  food: string;
  foodComplete: boolean;
  complete: boolean;
  /** What the total lacks, each with where it is mended. */
  missing: ReturnType<typeof withMend>[];
  check: ReturnType<typeof withMend>[];
  foot: string[];
  paper: { left: string; middle: string; right: string; foot: string };
};

/** Everything that stands on the costing page of an event, and the sheet of the same figures. */
export const costingPage = async (
  request: FastifyRequest,
  one: OneEvent,
  asked: InView,
  typed?: Event,
): Promise<{ model: CostingPage; sheet: Sheet }> => {
  const { value: built, problems } = buildUp(one.event, asked.facts, asked.view, asked.beside);
  const ofFood = costing(one.event, one.facts);
  const food = foodInView(ofFood.value, built);
  const all = worstFirst(once([...ofFood.problems, ...problems]));
  const sheet = buildUpSheet(built, food, all);
  const { event, facts, cost } = built;
  const { kitchen } = facts;
  const f = formatFor(kitchen);
  const guests = f.count(cost.guests, 'guest');
  const weighing = (wanted: (problem: Problem) => boolean) => all.filter(wanted).map(withMend);
  const model: CostingPage = {
    head: await headOf(request, one),
    at: addressesOf(event.key),
    guests,
    view: nameOfView(asked),
    query: withView('', nameOfView(asked)),
    viewName: viewNames[asked.view],
    views: viewLinks(event, asked),
    together: asked.beside.map(({ key, name }) => ({
      name,
      href: withView(addressesOf(key).costing, 'bought'),
    })),
    ladder: ladderOf(built),
    price: priceBox(built, asked, typed),
    quoted: await quotedFor(request, one),
    curve: curveModel({
      event,
      ...asked,
      page: addressesOf(event.key).costing,
      query: asWords(request.query),
    }),
    groups: event.groups.map(({ name, guests: many }, i) => ({
      name: `pays[${i}]`,
      label: `${name}, ${f.number(many)}`,
    })),
    unit: kitchen.currency,
    costed: event.costs.length > 0,
    bare: cost.food.dishes.length === 0,
    courses: courseRows(costShares(food.cost), food),
    ingredients: asked.view === 'used' ? ingredientRows(food) : [],
    packs: packRows(cost.food.packs, f),
    food: costShown(cost.food.cost, cost.food.complete, f),
    foodComplete: cost.food.complete,
    complete: cost.complete,
    missing: weighing(({ weight }) => weight !== 'check'),
    // How far the price is short of the floor stands in the ladder and beside the price.
    check: weighing(({ weight, code }) => weight === 'check' && code !== 'below-floor'),
    foot: sheet.foot,
    paper: {
      left: kitchen.name,
      middle: `${event.name}, ${f.dateYear(event.date)}, ${guests}`,
      right: `Costing, ${viewNames[asked.view]}`,
      foot: `${printedNow(request)} For the kitchen only. Void when guests, a menu, a recipe or a price change.`,
    },
  };
  return { model, sheet };
};

const asWords = (query: unknown) => query as Record<string, unknown>;

const once = (problems: readonly Problem[]): Problem[] => [
  ...new Map(problems.map((problem) => [`${problem.code} ${problem.sentence}`, problem])).values(),
];
