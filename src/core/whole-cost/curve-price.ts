import type { Event } from '../facts/event.js';
import type { Kitchen } from '../facts/kitchen.js';
import { exact } from '../quantity/amount.js';
import { Rational } from '../quantity/rational.js';
import { type Costed, selling } from '../selling/selling.js';
import type { CurvePoint } from './curve.js';

/** What so many guests bring without tax, in minor units, and the most they may cost for the margin to be kept. */
export type Priced = { net: Rational; margin: Rational | undefined; keeps: Rational | undefined };

/**
 * The price that stands, held at other head-counts: a price a guest or a total as it was set; one that follows from
 * margin or food cost as it comes out for the guests there are. Undefined while there is none.
 */
export const heldPrice = (event: Event, now: Costed, kitchen: Kitchen): Event['price'] | undefined => {
  const { by } = event.price;
  if (by === null) return undefined;
  if ('aGuest' in by || 'total' in by) return event.price;
  const { aGuest } = selling(event, now, kitchen);
  return aGuest === undefined ? undefined : { ...event.price, by: { aGuest } };
};

const hundred = Rational.of(100);

/** What a held price brings at each point of a curve, beside what it costs. */
export const pricedAt = (points: readonly CurvePoint[], price: Event['price'], kitchen: Kitchen): Priced[] =>
  points.map((point) => {
    const { net, margin } = selling({ ...point.event, price }, point, kitchen);
    const floor = kitchen.marginFloor;
    const keeps = floor === null ? undefined : hundred.minus(exact(floor)).over(hundred);
    return { net: Rational.of(net), margin, keeps: keeps?.times(Rational.of(net)) };
  });

/**
 * The least head-count of a curve from which on the price covers the cost, to its end; undefined when at its end it
 * doesn't, or when not all is known there.
 */
export const breakEven = (points: readonly CurvePoint[], priced: readonly Priced[]): number | undefined => {
  let from: number | undefined;
  for (const [i, { guests, exact: cost, complete }] of points.entries()) {
    const covered = complete && cost.compare(priced[i]!.net) <= 0;
    if (!covered) from = undefined;
    else from ??= guests;
  }
  return from;
};

/** The head-count within so many guests either way at which a guest costs least; of equals the nearest, then the fewest. */
export const cheapestNear = (
  points: readonly CurvePoint[],
  guests: number,
  within: number,
): CurvePoint | undefined => {
  const each = ({ exact, guests: n }: CurvePoint) => exact.over(Rational.of(n));
  const away = (point: CurvePoint) => Math.abs(point.guests - guests);
  return points
    .filter((point) => away(point) <= within)
    .sort((a, b) => each(a).compare(each(b)) || away(a) - away(b) || a.guests - b.guests)[0];
};
