import type { CostLine } from '../../core/facts/cost-line.js';
import { wholeCost } from '../../core/whole-cost/cost-of-party.js';
import { costShown } from '../events/dishes.js';
import type { OneEvent } from '../events/event.js';
import { formatFor } from '../format.js';

/** What other cost lines make of the cost of an event as used, in a sentence. */
export const costRipple = ({ event, facts }: OneEvent, costs: readonly CostLine[] | undefined): string => {
  const f = formatFor(facts.kitchen);
  const before = wholeCost(event, facts, 'used');
  const after = wholeCost({ ...event, costs: [...(costs ?? event.costs)] }, facts, 'used');
  const words = ({ total, aGuest, complete }: typeof before) =>
    `${costShown(total, complete, f)}${aGuest === undefined ? '' : `, ${costShown(aGuest, complete, f)} a guest`}`;
  return before.total === after.total && before.complete === after.complete
    ? `With the food as used it costs ${words(after)}.`
    : `With the food as used it costs ${words(before)}, and would cost ${words(after)}.`;
};
