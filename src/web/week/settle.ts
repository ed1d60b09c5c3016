import type { Event } from '../../core/facts/event.js';
import type { Mark } from '../../core/marks.js';
import type { Problem } from '../../core/problem.js';
import type { Week } from '../../core/sheets/week.js';
import { pageOf } from '../links.js';
import { mendOf, together, toSettle } from '../mends.js';

export type Settle = {
  open: number;
  stops: number;
  items: (Item & { mark: Mark | undefined; event: string; sentences: string[] })[];
  /** What is left out of the list, by event. */
  more: { mark: Mark | undefined; event: string; href: string; count: number }[];
};

type Item = Pick<Problem, 'weight' | 'sentence'> & { mend: string; href: string; of: Event };

const itemOf = ({ event, problem }: Week['settle'][number]): Item => {
  const { mend, href } = mendOf(problem);
  return { weight: problem.weight, sentence: problem.sentence, mend, href, of: event };
};

const mostShown = 8;

/** What must be settled before the parties of a week, worst first; a long list goes on under each event. */
export const settleFirst = ({ settle }: Week, marks: ReadonlyMap<string, Mark>): Settle => {
  const open = settle.filter(({ problem }) => toSettle(problem));
  const items = together(open.map(itemOf), ({ weight, of }) => `${weight} ${of.key}`);
  const rest = items.slice(mostShown);
  const events = new Map<string, Event>(rest.map(({ of }) => [of.key, of]));
  return {
    open: open.length,
    stops: open.filter(({ problem }) => problem.weight === 'stop').length,
    items: items
      .slice(0, mostShown)
      .map((item) => ({ ...item, mark: marks.get(item.of.key), event: item.of.name })),
    more: [...events.values()].map(({ key, name }) => ({
      mark: marks.get(key),
      event: name,
      href: `${pageOf('event', key)}#clashes`,
      count: rest.flatMap(({ of, sentences }) => (of.key === key ? sentences : [])).length,
    })),
  };
};
