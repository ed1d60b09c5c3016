import { type EventChange, eventChange, moreOf } from './event-change.js';
import type { Event } from './facts/event.js';
import type { Facts } from './facts/facts.js';
import type { Rational } from './quantity/rational.js';
import type { DishSummary } from './sheets/event-summary.js';

export type DishChange = {
  before: DishSummary;
  after: DishSummary;
  /** Batches more (or fewer, below zero); undefined when either isn't known. */
  batches: Rational | undefined;
  /** What it costs more in minor units, below zero when less; undefined when either cost isn't complete. */
  more: number | undefined;
  /** True for a dish set for a number of guests: it does not follow the head-count. */
  setByNumber: boolean;
  /** Groups of which the dish is set for more guests than there would be. */
  overset: { name: string; set: number; guests: number }[];
};

export type GuestChange = EventChange & { dishes: DishChange[] };

/** An event with new numbers in its guest groups; groups not named keep theirs. */
export const withGuests = (event: Event, guests: ReadonlyMap<string, number>): Event => ({
  ...event,
  groups: event.groups.map((group) => ({ ...group, guests: guests.get(group.key) ?? group.guests })),
});

/** What other numbers of guests would change, dish by dish and in what must be settled, before anything is saved. */
export const guestChange = (event: Event, guests: ReadonlyMap<string, number>, facts: Facts): GuestChange => {
  const changed = withGuests(event, guests);
  const change = eventChange(event, changed, facts);
  const now = change.after.courses.flatMap(({ dishes }) => dishes);
  const dishes = change.before.courses
    .flatMap((course) => course.dishes)
    .map((before, i) => dishChange(before, now[i]!, changed));
  return { ...change, dishes };
};

const dishChange = (before: DishSummary, after: DishSummary, changed: Event): DishChange => {
  const [from, to] = [before.need.recipes[0]!.factor, after.need.recipes[0]!.factor];
  const { eaters } = after.need.dish;
  const counts = 'counts' in eaters ? eaters.counts : [];
  return {
    before,
    after,
    batches: from && to?.minus(from),
    more: moreOf(before.cost.complete && after.cost.complete, before.cost.cost, after.cost.cost),
    setByNumber: 'counts' in eaters,
    overset: changed.groups.flatMap(({ key, name, guests }) => {
      const set = counts.find(({ group }) => group === key)?.guests ?? 0;
      return set > guests ? [{ name, set, guests }] : [];
    }),
  };
};
