import { type Event, event } from '../../../src/core/facts/event.js';
import { byKey, type Facts } from '../../../src/core/facts/facts.js';
import { wholeCost } from '../../../src/core/whole-cost/cost-of-party.js';
import { curveOf } from '../../../src/core/whole-cost/curve.js';
import { withHeadCount } from '../../../src/core/whole-cost/head-count.js';
import type { CostView } from '../../../src/core/whole-cost/whole-cost.js';
import { type Figure, meets } from '../figure.js';
import { measured } from '../kitchen/events.js';
import { kitchenOf, sizes } from '../kitchen/kitchen.js';
import { within } from '../timing.js';

const range = { from: 1, to: 150 };
const rounds = 40;
const views: CostView[] = ['used', 'bought'];

const costs = [
  { key: 'cooking', name: 'Cooking', kind: 'hands', by: { rate: 1600, hours: 'cooking' } },
  { key: 'serving', name: 'Serving', kind: 'hands', by: { rate: 1250, hours: '4', guestsEach: 20 } },
  { key: 'driving', name: 'Driving', kind: 'travel', by: { rate: 1400, hours: 'driving' } },
  { key: 'ovens', name: 'Ovens', kind: 'energy', by: { rate: 90, hours: 'ovens' } },
  { key: 'rings', name: 'Hob', kind: 'energy', by: { rate: 40, hours: 'rings' } },
  {
    key: 'crates',
    name: 'Plate crates',
    kind: 'hire',
    by: { step: 1350, holds: 25, each: '2', spare: '10' },
  },
  { key: 'napkins', name: 'Napkins', kind: 'sundries', by: { aGuest: 22 } },
  { key: 'overhead', name: 'Overhead', kind: 'overhead', by: { fixed: 2500 } },
  { key: 'spare', name: 'Contingency', kind: 'contingency', by: { percent: '3', of: 'costs' } },
];

/** What a guest costs at 150 head-counts of a party of fifteen dishes, and how many of them are as worked out alone. */
export const measureCurve = async (): Promise<Figure[]> => {
  const { party, beside, facts } = partyOf();
  return views.flatMap((view) => {
    const times: number[] = [];
    const work: number[] = [];
    for (let round = -5; round < rounds; round += 1) {
      // Facts of one's own, so that nothing worked out before is at hand.
      const fresh = { ...facts, kitchen: { ...facts.kitchen } };
      const [begun, used] = [performance.now(), process.cpuUsage()];
      curveOf(party, fresh, view, range, beside);
      const { user, system } = process.cpuUsage(used);
      if (round < 0) continue;
      times.push(performance.now() - begun);
      work.push((user + system) / 1000);
    }
    const begun = performance.now();
    const equal = equalAlone(party, facts, view, beside);
    const figure = {
      part: 'curve',
      engine: 'no database',
      of: `150 head-counts, ${view}`,
      unit: 'ms',
    } as const;
    const p50 = within(times, 50);
    return [
      { ...figure, what: 'p50', value: p50, target: meets(p50, { rule: 'under', limit: 50 }) },
      { ...figure, what: 'p95', value: within(times, 95) },
      { ...figure, what: 'processor time p50', value: within(work, 50) },
      { ...figure, what: 'each alone', value: performance.now() - begun },
      {
        ...figure,
        what: 'that differ from each alone',
        value: 150 - equal,
        unit: 'times',
        target: meets(150 - equal, { rule: 'at most', limit: 0 }),
      },
    ];
  });
};

const partyOf = () => {
  const { events, kitchen, ...lists } = kitchenOf({ ...sizes, events: 20 });
  const facts: Facts = {
    kitchen,
    places: byKey(lists.places),
    ingredients: byKey(lists.ingredients),
    recipes: byKey(lists.recipes),
  };
  const party = event.parse({ ...events.find(({ key }) => key === measured)!, costs });
  return { party, beside: events.filter(({ key }) => key === 'event-1' || key === 'event-2'), facts };
};

const equalAlone = (party: Event, facts: Facts, view: CostView, beside: readonly Event[]): number =>
  curveOf(party, facts, view, range, beside).points.filter(({ guests, exact, aGuest, complete }) => {
    const alone = wholeCost(withHeadCount(party, guests), facts, view, beside);
    return exact.equals(alone.exact) && aGuest === alone.aGuest && complete === alone.complete;
  }).length;
