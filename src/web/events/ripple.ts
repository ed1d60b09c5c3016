import { type EventChange, eventChange } from '../../core/event-change.js';
import type { Event } from '../../core/facts/event.js';
import type { Facts } from '../../core/facts/facts.js';
import type { EventSummary } from '../../core/sheets/event-summary.js';
import { type Format, formatFor } from '../format.js';
import { type Clashes, clashes, clashesAfter } from './clashes.js';
import { costShown } from './dishes.js';

/** What a change would do, in a line of words, and what it would leave to settle. */
export type Ripple = { words: string; clashes: Clashes };

/** What a change of an event would do before it is saved: food cost, food cost a guest, and what it newly clashes with. */
export const ripple = (event: Event, changed: Event | undefined, facts: Facts): Ripple => {
  const change = eventChange(event, changed ?? event, facts);
  const f = formatFor(facts.kitchen);
  const { before, after, problems } = change;
  const moved = before.cost.total !== after.cost.total || before.cost.aGuest !== after.cost.aGuest;
  const anyNew = problems.some(({ isNew }) => isNew);
  return {
    words: costWords(change, moved, f),
    clashes:
      anyNew || moved
        ? clashesAfter('Clashes, once saved', change)
        : clashes(problems.map(({ problem }) => problem)),
  };
};

const costWords = ({ before, after }: EventChange, moved: boolean, f: Format): string => {
  const aGuest = ({ cost }: EventSummary) => costShown(cost.aGuest, cost.complete, f) || 'not known';
  const all = ({ cost }: EventSummary) => costShown(cost.total, cost.complete, f);
  if (isEmpty(after))
    return 'What the food costs is said here once there is a dish, and who eats it is known.';
  if (isEmpty(before)) return `Food would cost ${all(after)}, ${aGuest(after)} a guest.`;
  if (!moved) return `Food costs ${all(after)}, ${aGuest(after)} a guest.`;
  return `Food costs ${all(before)} and would cost ${all(after)}; ${aGuest(before)} a guest would be ${aGuest(after)}.`;
};

const isEmpty = ({ courses }: EventSummary): boolean => courses.every(({ dishes }) => dishes.length === 0);
