import type { Event } from '../facts/event.js';
import { type Facts, factsOf } from '../facts/facts.js';
import { allocate, toMinor } from '../money.js';
import type { Answer, Problem } from '../problem.js';
import { Rational } from '../quantity/rational.js';
import { worstFirst } from '../requirements.js';
import { priceForMargin } from '../selling/price.js';
import { type Selling, selling } from '../selling/selling.js';
import { askingCost } from '../whole-cost/asking-cost.js';
import { wholeCost } from '../whole-cost/cost-of-party.js';
import type { CostPart, CostView, WholeCost } from '../whole-cost/whole-cost.js';

/** One rung of the build-up, in minor units: it begins where the last one ended. */
export type Rung = {
  of: 'food' | 'line' | 'margin' | 'tax';
  part: CostPart | undefined;
  /** Its part of what one guest comes to, on average; the rungs add up to it. undefined without guests. */
  aGuest: number | undefined;
  cost: number;
  from: number;
  complete: boolean;
};

/** How the price of an event builds up from its costs in one view. */
export type BuildUp = {
  event: Event;
  facts: Facts;
  cost: WholeCost;
  sold: Selling;
  /** Food and cost lines, in order; they add up to the cost of the event, and to that of a guest. */
  rungs: Rung[];
  /** What is left of the price and the tax on it; none without a price, and no margin while the cost is incomplete. */
  margin: Rung | undefined;
  tax: Rung | undefined;
  /** The price of all guests, without tax where that is added to it, and of one of them on average, halves up. */
  price: { total: number; aGuest: number | undefined } | undefined;
  /** true when every guest pays the same, and that is what the average says. */
  alike: boolean;
  /** Where the red line stands on the scale of the rungs. */
  floor: number | undefined;
  /** The longest that is drawn. */
  scale: number;
};

/**
 * How an event's price builds up: the food in one view, every other cost, what is left, the tax. Minor units; what a
 * guest comes to is rounded half up and shared out so that its rungs add up. `beside` are the events that packs are
 * bought for together.
 */
export const buildUp = (
  event: Event,
  today: Facts,
  view: CostView,
  beside: readonly Event[] = [],
): Answer<BuildUp> => {
  const facts = factsOf(event, today);
  const cost = wholeCost(event, today, view, beside);
  const sold = selling(event, cost, facts.kitchen, askingCost(event, today, cost));
  const rungs = rungsOf(cost);
  const after = priceOf(cost, sold, facts.kitchen.tax?.included === true);
  const atFloor = sold.floor && priceForMargin(cost.exact, sold.floor.margin);
  const floor = atFloor && toMinor(atFloor);
  return {
    value: {
      event,
      facts,
      cost,
      sold,
      rungs,
      ...after,
      floor,
      scale: Math.max(cost.total, sold.total, floor ?? 0),
    },
    problems: worstFirst([...cost.problems, ...sold.problems.filter(isOfPrice)]),
  };
};

/** That no price is set yet stands on the page as it is. */
const isOfPrice = ({ code }: Problem): boolean => code !== 'price-not-set';

const rungsOf = ({ food, parts, aGuest }: WholeCost): Rung[] => {
  const each =
    aGuest === undefined
      ? undefined
      : allocate(aGuest, [food.exact, ...parts.map(({ exact }) => exact ?? Rational.zero)]);
  const costs = [food, ...parts].map(({ cost }) => cost);
  return [food, ...parts].map(({ cost, complete }, i) => ({
    of: i === 0 ? 'food' : 'line',
    part: parts[i - 1],
    aGuest: each?.[i],
    cost,
    from: costs.slice(0, i).reduce((all, one) => all + one, 0),
    complete,
  }));
};

const priceOf = (cost: WholeCost, sold: Selling, included: boolean) => {
  if (sold.rows.length === 0) return { margin: undefined, tax: undefined, price: undefined, alike: true };
  const { net, total, rows, aGuest: full } = sold;
  const average = (sum: number) => (cost.guests > 0 ? toMinor(Rational.of(sum, cost.guests)) : undefined);
  const [netEach, totalEach] = [average(net), average(total)];
  const less = (a: number | undefined, b: number | undefined) =>
    a === undefined || b === undefined ? undefined : a - b;
  const taxed = sold.tax > 0 || included;
  return {
    margin: cost.complete
      ? {
          of: 'margin' as const,
          part: undefined,
          aGuest: less(netEach, cost.aGuest),
          cost: net - cost.total,
          from: cost.total,
          complete: true,
        }
      : undefined,
    tax: taxed
      ? {
          of: 'tax' as const,
          part: undefined,
          aGuest: less(totalEach, netEach),
          cost: sold.tax,
          from: net,
          complete: true,
        }
      : undefined,
    price: included ? { total, aGuest: totalEach } : { total: net, aGuest: netEach },
    alike:
      rows.every(({ each }) => each !== undefined && each === full) &&
      sold.gross === (included ? total : net),
  };
};
