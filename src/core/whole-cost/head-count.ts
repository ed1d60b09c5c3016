import type { Event } from '../facts/event.js';
import { withGuests } from '../guest-change.js';

/**
 * How many of each group come when so many guests come in all: the groups keep their proportions, each further guest
 * going to the group that is furthest behind (Sainte-Laguë), so that no group shrinks as guests come, and the
 * head-count of the event gives its own groups. Where nobody comes yet, all are of the first group.
 */
export const groupsAt = (event: Event, guests: number): Map<string, number> => {
  const { groups } = event;
  const now = groups.reduce((all, group) => all + group.guests, 0);
  const weights = now > 0 ? groups.map((group) => group.guests) : groups.map((_, i) => (i === 0 ? 1 : 0));
  const all = now > 0 ? now : 1;
  // Whole multiples of the groups as they are keep them exactly; only the rest is dealt out one by one.
  const whole = Math.floor(guests / all);
  const dealt = weights.map((weight) => weight * whole);
  for (let left = guests - all * whole; left > 0; left -= 1) {
    let next = 0;
    for (const [i, weight] of weights.entries())
      if (weight * (2 * dealt[next]! + 1) > weights[next]! * (2 * dealt[i]! + 1)) next = i;
    dealt[next] = dealt[next]! + 1;
  }
  return new Map(groups.map(({ key }, i) => [key, dealt[i]!]));
};

/** The event as it would be with so many guests, as the change of its guests would leave it. */
export const withHeadCount = (event: Event, guests: number): Event =>
  withGuests(event, groupsAt(event, guests));
