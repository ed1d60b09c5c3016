import type { Event } from '../facts/event.js';
import type { Tax } from '../facts/price.js';
import type { Problem } from '../problem.js';
import { Rational } from '../quantity/rational.js';
import { charge, grossFor } from './charge.js';
import { leastPrice, priceForFoodCost, priceForMargin } from './price.js';
import { foodCostZero, marginTooHigh, type PriceGap, priceGap } from './problems.js';
import { linesOf, payersOf, rowsAt, rowsOfTotal, type SoldRow, weightOf } from './rows.js';
import type { Costed } from './selling.js';

/** What an event is asked to pay: a row for each group, at a full price where there is one. */
export type Asked = { rows: SoldRow[]; aGuest: number | undefined };

/** The rows of an event's price as it is set; or what stands in the way. */
export const askedOf = (event: Event, cost: Costed, tax: Tax | null): Asked | Problem => {
  const { by } = event.price;
  const step = stepOf(event);
  const payers = payersOf(event);
  if (!by) return priceGap(event, 'price-not-set');
  if (payers.length === 0) return priceGap(event, 'price-no-guests');
  if ('aGuest' in by) return { rows: rowsAt(payers, by.aGuest, step), aGuest: by.aGuest };
  if ('total' in by) return rowsOfTotal(payers, by.total) ?? priceGap(event, gapOfTotal(event, by.total));
  const net = netAsked(event, by, cost);
  if (isProblem(net)) return net;
  const aGuest = priceReaching(event, net, tax, step);
  return typeof aGuest === 'number' ? { rows: rowsAt(payers, aGuest, step), aGuest } : aGuest;
};

const stepOf = ({ price }: Event): number => Math.max(1, price.roundTo);

const gapOfTotal = (event: Event, total: number): PriceGap =>
  weightOf(payersOf(event)).own > total ? 'price-own-over-total' : 'price-nobody-pays';

/** The price without tax, in minor units and exact, that a margin or a share of food asks for. */
const netAsked = (
  event: Event,
  by: { margin: string } | { foodCost: string },
  { exact, complete, food }: Costed,
): Rational | Problem => {
  const net = 'margin' in by ? priceForMargin(exact, by.margin) : priceForFoodCost(food.exact, by.foodCost);
  if (!net) return 'margin' in by ? marginTooHigh(event, by.margin) : foodCostZero(event);
  if ('margin' in by && !complete) return priceGap(event, 'price-cost-open');
  if ('foodCost' in by && !food.complete) return priceGap(event, 'price-food-open');
  return net.isZero ? priceGap(event, 'price-of-nothing') : net;
};

/**
 * The least full price of a guest, a multiple of `step`, at which the event as charged reaches a price without tax: all
 * groups, the discount and every rounding counted, the minimum left out.
 */
export const priceReaching = (
  event: Event,
  net: Rational,
  tax: Tax | null,
  step: number,
): number | Problem => {
  const payers = payersOf(event);
  const { full, own } = weightOf(payers);
  if (full.isZero) return priceGap(event, 'price-nobody-pays');
  const gross = grossFor(net, event.price, tax);
  if (!gross) return priceGap(event, 'price-discount-all');
  const from = gross.minus(Rational.of(own)).over(full);
  return (
    leastPrice(from, step, (price) =>
      reaches(linesOf(rowsAt(payers, price, stepOf(event))), event, net, tax),
    ) ?? priceGap(event, 'price-too-high')
  );
};

/** The least total at which the event as charged reaches a price without tax; undefined where none does. */
export const totalReaching = (event: Event, net: Rational, tax: Tax | null): number | undefined => {
  const payers = payersOf(event);
  const gross = grossFor(net, event.price, tax);
  return (
    gross &&
    leastPrice(gross, 1, (total) => {
      const asked = rowsOfTotal(payers, total);
      return asked !== undefined && reaches(linesOf(asked.rows), event, net, tax);
    })
  );
};

const reaches = (lines: readonly number[], { price }: Event, net: Rational, tax: Tax | null): boolean =>
  net.compare(Rational.of(charge(lines, { ...price, minimum: null }, tax).net)) <= 0;

export const isProblem = (one: object): one is Problem => 'sentence' in one;
