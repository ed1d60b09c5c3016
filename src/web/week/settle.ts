import type { Event } from '../../core/facts/event.js';
import type { Mark } from '../../core/marks.js';
import type { Week } from '../../core/sheets/week.js';
import { pageOf } from '../links.js';
import { withMend } from '../mends.js';

export type Settle = {
  open: number;
  stops: number;
  items: (ReturnType<typeof withMend> & { mark: Mark | undefined; event: string })[];
  /** What is left out of the list, by event. */
  more: { mark: Mark | undefined; event: string; href: string; count: number }[];
};

const mostShown = 8;

/** What must be settled before the parties of a week, worst first; a long list goes on under each event. */
export const settleFirst = ({ settle }: Week, marks: ReadonlyMap<string, Mark>): Settle => {
  // What goes in to taste is decided at the pot; there is nothing to settle about it.
  const open = settle.filter(({ problem }) => problem.code !== 'to-taste');
  const rest = open.slice(mostShown);
  const events = new Map<string, Event>(rest.map(({ event }) => [event.key, event]));
  return {
    open: open.length,
    stops: open.filter(({ problem }) => problem.weight === 'stop').length,
    items: open.slice(0, mostShown).map(({ event, problem }) => ({
      ...withMend(problem),
      mark: marks.get(event.key),
      event: event.name,
    })),
    more: [...events.values()].map(({ key, name }) => ({
      mark: marks.get(key),
      event: name,
      href: `${pageOf('event', key)}#clashes`,
      count: rest.filter(({ event }) => event.key === key).length,
    })),
  };
};
