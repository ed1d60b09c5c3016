import type { Event } from '../facts/event.js';
import type { Kitchen } from '../facts/kitchen.js';
import type { SellingPrice } from '../facts/price.js';
import type { Problem } from '../problem.js';
import { exact } from '../quantity/amount.js';
import { Rational } from '../quantity/rational.js';
import type { WholeCost } from '../whole-cost/whole-cost.js';
import { askedOf, isProblem } from './asked.js';
import { type Charge, charge } from './charge.js';
import { type Floor, floorOf } from './floor.js';
import { foodCostOf, marginOf } from './price.js';
import { belowFloor, priceGap } from './problems.js';
import { linesOf, type SoldRow } from './rows.js';

/** What an event is sold at, in minor units; without rows and all 0 while no price can be said. */
export type Selling = Charge & {
  asked: SellingPrice['by'];
  /** The full price of a guest as named; undefined where there is none. */
  aGuest: number | undefined;
  /** Groups that come, in the order of the event; they add up to `gross`. */
  rows: SoldRow[];
  /** Per cent of net, exact; undefined while the cost is incomplete or there is no price. */
  margin: Rational | undefined;
  /** The food as per cent of net, exact; undefined while its cost is incomplete or there is no price. */
  foodCost: Rational | undefined;
  /** undefined while the kitchen states none, or the cost is incomplete. */
  floor: Floor | undefined;
  problems: Problem[];
};

/** Of what an event costs, all that its price turns on. */
export type Costed = Pick<WholeCost, 'exact' | 'complete'> & {
  food: Pick<WholeCost['food'], 'exact' | 'complete'>;
};

/**
 * What an event is sold at and what that leaves. In this order: a price for each group's guests, what is added to
 * reach the minimum, what is taken off, tax. A price a guest that is worked out is the least multiple of what prices
 * are rounded to that reaches the margin, or the food's share, once discount, tax and all roundings are counted;
 * `asking` is the cost it follows from, where what is left is to be seen against another.
 */
export const selling = (event: Event, cost: Costed, kitchen: Kitchen, asking: Costed = cost): Selling => {
  const { price } = event;
  const asked = askedOf(event, asking, kitchen.tax);
  const { rows, aGuest } = isProblem(asked) ? { rows: [], aGuest: undefined } : asked;
  const charged = isProblem(asked) ? nothing : charge(linesOf(rows), price, kitchen.tax);
  const floor = cost.complete
    ? floorOf(event, cost, kitchen, rows.length ? charged.net : undefined)
    : undefined;
  return {
    ...charged,
    asked: price.by,
    aGuest,
    rows,
    margin: cost.complete ? marginOf(cost.exact, charged.net) : undefined,
    foodCost: cost.food.complete ? foodCostOf(cost.food.exact, charged.net) : undefined,
    floor,
    problems: [
      ...(isProblem(asked) ? [asked] : []),
      ...(rows.length && takesTooMuch(event, charged) ? [priceGap(event, 'discount-over')] : []),
      ...(floor?.short ? [belowFloor(event, floor.margin)] : []),
    ],
  };
};

const nothing: Charge = { gross: 0, minimum: 0, discount: 0, net: 0, tax: 0, total: 0 };

const takesTooMuch = ({ price: { discount } }: Event, { gross, minimum }: Charge): boolean => {
  if (!discount) return false;
  return 'off' in discount
    ? discount.off > gross + minimum
    : exact(discount.percent).compare(Rational.of(100)) > 0;
};
