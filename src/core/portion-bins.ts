import type { Course, Dish, Guest } from './facts/event.js';
import type { Facts } from './facts/facts.js';
import { isKeptFor, serviceOf } from './kept-apart.js';
import { Rational } from './quantity/rational.js';

/** Portions of a dish for one group; `kept` ones are for those alone for whom portions are kept back. */
export type Bin = { dish: Dish; shared: boolean; kept: boolean; size: number };

/** Heads of a group: all of them, those who take of every dish, and those for whom portions of this one are kept by name. */
export type Heads = { guests: number; others: number; named: number };

/**
 * The portions of a dish that a group is made, in whole portions. Of a plated one those kept for guests by name are
 * for these alone. Where guests serve themselves others take at the rate the dish is made for, and what they take may
 * be kept for a guest before they do.
 */
export const binsOf = (dish: Dish, course: Course, made: Rational, heads: Heads): Bin[] => {
  const whole = Number(made.floor());
  if (whole === 0) return [];
  const shared = serviceOf(dish, course) === 'shared';
  const open = shared ? openIn(made, heads) : Math.max(0, whole - heads.named);
  const size = Math.min(whole, open);
  return [
    { dish, shared, kept: false, size },
    ...(size < whole ? [{ dish, shared, kept: true, size: whole - size }] : []),
  ];
};

const openIn = (made: Rational, { guests, others }: Heads): number => {
  const rate = made.over(Rational.of(Math.max(guests, 1)));
  const each = rate.compare(Rational.one) > 0 ? Rational.one : rate;
  return Number(made.minus(each.times(Rational.of(others))).ceil());
};

/** Whether a guest may have portions of a bin by the way they are kept, whatever they eat. */
export const isOpenTo = (guest: Guest, { dish, shared, kept }: Bin, facts: Facts): boolean =>
  !kept || (shared ? isKeptFor(guest, dish, facts) : dish.keptFor.includes(guest.key));
