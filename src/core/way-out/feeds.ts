import type { Event, Guest } from '../facts/event.js';
import type { Facts } from '../facts/facts.js';
import { serviceOf } from '../kept-apart.js';
import { isChoosy } from '../portions.js';
import { Rational } from '../quantity/rational.js';
import { eatersOf } from '../requirements.js';
import { eats, type Lack } from './lacking.js';
import type { Offering } from './offers.js';

const heads = (guests: readonly Guest[]): number => guests.reduce((sum, { count }) => sum + count, 0);

/**
 * How many guests the portions that are there can feed; null where it is made for as many as take it. Where guests
 * serve themselves, others have theirs first; plated portions kept by name are not others'.
 */
export const feedsOf = (
  { group, dish, course, kind, recipe }: Offering,
  lacks: readonly Lack[],
  event: Event,
  facts: Facts,
): number | null => {
  if (group === undefined) return null;
  const made = eatersOf(dish!.eaters, event).get(group) ?? Rational.zero;
  const whole = Number(made.floor());
  if (serviceOf(dish!, course) === 'plated') {
    const short = new Set(lacks.flatMap((one) => (one.course === course && one.short ? [one.guest] : [])));
    const named = event.guests.filter(
      (one) => one.group === group && dish!.keptFor.includes(one.key) && !short.has(one),
    );
    return Math.max(0, whole - heads(named));
  }
  const all = event.groups.find(({ key }) => key === group)!.guests;
  const choosy = event.guests.filter((guest) => guest.group === group && isChoosy(guest));
  if (kind === 'kept')
    return whole >= all
      ? whole
      : Math.max(0, whole - heads(choosy.filter((one) => eats(one, recipe, facts))));
  const rate = made.over(Rational.of(Math.max(all, 1)));
  const each = rate.compare(Rational.one) > 0 ? Rational.one : rate;
  const left = made.minus(each.times(Rational.of(Math.max(0, all - heads(choosy)))));
  return Math.max(0, Math.min(whole, Number(left.ceil())));
};
