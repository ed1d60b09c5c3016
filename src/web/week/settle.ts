import type { Event } from '../../core/facts/event.js';
import type { Mark } from '../../core/marks.js';
import type { Week } from '../../core/sheets/week.js';
import { pageOf } from '../links.js';
import { together, toSettle, withMend } from '../mends.js';

export type Settle = {
  open: number;
  stops: number;
  items: (ReturnType<typeof withMend> & { mark: Mark | undefined; event: string; sentences: string[] })[];
  /** What is left out of the list, by event. */
  more: { mark: Mark | undefined; event: string; href: string; count: number }[];
};

const mostShown = 8;

/** What must be settled before the parties of a week, worst first; a long list goes on under each event. */
export const settleFirst = ({ settle }: Week, marks: ReadonlyMap<string, Mark>): Settle => {
  const open = settle
    .filter(({ problem }) => toSettle(problem))
    .map(({ event, problem }) => ({
      ...withMend(problem),
      of: event,
      mark: marks.get(event.key),
      event: event.name,
    }));
  const items = together(open, ({ weight, of }) => `${weight} ${of.key}`);
  const rest = items.slice(mostShown);
  const events = new Map<string, Event>(rest.map(({ of }) => [of.key, of]));
  return {
    open: open.length,
    stops: open.filter(({ weight }) => weight === 'stop').length,
    items: items.slice(0, mostShown),
    more: [...events.values()].map(({ key, name }) => ({
      mark: marks.get(key),
      event: name,
      href: `${pageOf('event', key)}#clashes`,
      count: rest.flatMap(({ of, sentences }) => (of.key === key ? sentences : [])).length,
    })),
  };
};
