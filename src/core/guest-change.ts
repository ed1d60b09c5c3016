import type { Event } from './facts/event.js';
import type { Facts } from './facts/facts.js';
import type { Problem } from './problem.js';
import type { Rational } from './quantity/rational.js';
import { type DishSummary, type EventSummary, eventSummary } from './sheets/event-summary.js';

export type DishChange = {
  before: DishSummary;
  after: DishSummary;
  /** Batches more (or fewer, below zero); undefined when either isn't known. */
  batches: Rational | undefined;
  /** True for a dish set for a number of guests: it does not follow the head-count. */
  setByNumber: boolean;
};

export type GuestChange = {
  before: EventSummary;
  after: EventSummary;
  dishes: DishChange[];
  problems: { problem: Problem; isNew: boolean }[];
};

/** An event with new numbers in its guest groups; groups not named keep theirs. */
export const withGuests = (event: Event, guests: ReadonlyMap<string, number>): Event => ({
  ...event,
  groups: event.groups.map((group) => ({ ...group, guests: guests.get(group.key) ?? group.guests })),
});

/** What other numbers of guests would change, dish by dish and in what must be settled, before anything is saved. */
export const guestChange = (event: Event, guests: ReadonlyMap<string, number>, facts: Facts): GuestChange => {
  const { value: before, problems: known } = eventSummary(event, facts);
  const { value: after, problems } = eventSummary(withGuests(event, guests), facts);
  const old = new Set(known.map(({ sentence }) => sentence));
  const now = after.courses.flatMap(({ dishes }) => dishes);
  const dishes = before.courses
    .flatMap((course) => course.dishes)
    .map((dish, i) => {
      const next = now[i]!;
      const [from, to] = [dish.need.recipes[0]!.factor, next.need.recipes[0]!.factor];
      return {
        before: dish,
        after: next,
        batches: from && to?.minus(from),
        setByNumber: 'counts' in dish.need.dish.eaters,
      };
    });
  return {
    before,
    after,
    dishes,
    problems: problems.map((problem) => ({ problem, isNew: !old.has(problem.sentence) })),
  };
};
