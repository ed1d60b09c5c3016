import type { Event } from './facts/event.js';
import type { Facts } from './facts/facts.js';
import type { Problem } from './problem.js';
import { type EventSummary, eventSummary } from './sheets/event-summary.js';

export type EventChange = {
  before: EventSummary;
  after: EventSummary;
  /** What the food costs more, in minor units, below zero when less; undefined when either cost isn't complete. */
  more: number | undefined;
  /** What must be settled after the change, worst first; those that it brings are new. */
  problems: { problem: Problem; isNew: boolean }[];
};

/** What a change of an event would do to its quantities, its cost and what must be settled, before it is saved. */
export const eventChange = (event: Event, changed: Event, facts: Facts): EventChange => {
  const { value: before, problems: known } = eventSummary(event, facts);
  const { value: after, problems } = eventSummary(changed, facts);
  const old = new Set(known.map(({ sentence }) => sentence));
  return {
    before,
    after,
    more: moreOf(before.cost.complete && after.cost.complete, before.cost.total, after.cost.total),
    problems: problems.map((problem) => ({ problem, isNew: !old.has(problem.sentence) })),
  };
};

/** The difference of two costs in minor units; undefined unless both are complete. */
export const moreOf = (complete: boolean, before: number, after: number): number | undefined =>
  complete ? after - before : undefined;
