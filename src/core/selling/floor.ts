import type { Event } from '../facts/event.js';
import type { Kitchen } from '../facts/kitchen.js';
import { Rational } from '../quantity/rational.js';
import { priceReaching, totalReaching } from './asked.js';
import { priceForMargin } from './price.js';
import type { Costed } from './selling.js';

/** How a price stands beside the least margin a kitchen wants to keep. */
export type Floor = {
  /** Per cent, as the kitchen states it. */
  margin: string;
  /** Minor units that the price without tax is short of it, rounded up; 0 when reached, undefined without a price. */
  short: number | undefined;
  /** The least price that reaches it, to the minor unit, as named: of a guest, */
  aGuest: number | undefined;
  /** or of the event where a total is asked. */
  total: number | undefined;
};

/** What would reach the least margin, and by how much a price without tax is short; undefined where none is stated. */
export const floorOf = (
  event: Event,
  cost: Costed,
  { marginFloor, tax }: Pick<Kitchen, 'marginFloor' | 'tax'>,
  net: number | undefined,
): Floor | undefined => {
  const asked = marginFloor === null ? undefined : priceForMargin(cost.exact, marginFloor);
  if (marginFloor === null || !asked) return undefined;
  const short = net === undefined ? undefined : Math.max(0, Number(asked.minus(Rational.of(net)).ceil()));
  const byTotal = event.price.by !== null && 'total' in event.price.by;
  const aGuest = byTotal ? undefined : priceReaching(event, asked, tax, 1);
  return {
    margin: marginFloor,
    short,
    aGuest: typeof aGuest === 'number' ? aGuest : undefined,
    total: byTotal ? totalReaching(event, asked, tax) : undefined,
  };
};
