import type { Event } from '../../core/facts/event.js';
import type { Mark } from '../../core/marks.js';
import type { Problem } from '../../core/problem.js';
import type { Week } from '../../core/sheets/week.js';
import { pageOf } from '../links.js';
import type { Warning } from '../marks.js';
import { mendOf, together, toSettle } from '../mends.js';
import { type OutdatedPaper, printAgain } from '../printed/outdated.js';

export type Settle = {
  open: number;
  stops: number;
  items: (Item & { mark: Mark | undefined; event: string; sentences: string[] })[];
  /** What is left out of the list, by event. */
  more: { mark: Mark | undefined; event: string; href: string; count: number }[];
};

type Item = Pick<Problem, 'sentence'> & { weight: Warning; mend: string; href: string; of: Event };

const itemOf = ({ event, problem }: Week['settle'][number]): Item => {
  const { mend, href } = mendOf(problem);
  return { weight: problem.weight, sentence: problem.sentence, mend, href, of: event };
};

const mostShown = 8;

const paperItem = ({ event, sentence, href }: OutdatedPaper): Item => ({
  weight: 'changed',
  sentence,
  mend: printAgain,
  href,
  of: event,
});

/**
 * What must be settled before the parties of a week, worst first, papers that no longer hold after the stops; a long list
 * goes on under each event.
 */
export const settleFirst = (
  { settle }: Pick<Week, 'settle'>,
  marks: ReadonlyMap<string, Mark>,
  papers: readonly OutdatedPaper[],
): Settle => {
  const open = settle.filter(({ problem }) => toSettle(problem));
  const stops = open.filter(({ problem }) => problem.weight === 'stop').map(itemOf);
  const others = open.filter(({ problem }) => problem.weight !== 'stop').map(itemOf);
  const all = [...stops, ...papers.map(paperItem), ...others];
  const items = together(all, ({ weight, of }) => `${weight} ${of.key}`);
  const rest = items.slice(mostShown);
  const events = new Map<string, Event>(rest.map(({ of }) => [of.key, of]));
  return {
    open: all.length,
    stops: stops.length,
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
