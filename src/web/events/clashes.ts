import type { EventChange } from '../../core/event-change.js';
import type { Problem } from '../../core/problem.js';
import type { Warning } from '../marks.js';
import { withMend } from '../mends.js';

export type ClashItem = { kind: Warning; sentence: string; href: string; mend: string };
/** What must be settled, worst first, beside the page of an event. */
export type Clashes = { title: string; count: string; items: ClashItem[] };

/** What must be settled as things stand. */
export const clashes = (problems: readonly Problem[]): Clashes => ({
  title: 'Clashes',
  count: problems.length === 0 ? '' : `${problems.length} open`,
  items: problems.map((problem) => item(problem, problem.weight)),
});

/** What must be settled after a change: what is new first, then the rest, each worst first. */
export const clashesAfter = (title: string, { problems }: Pick<EventChange, 'problems'>): Clashes => {
  const fresh = problems.filter(({ isNew }) => isNew);
  const old = problems.filter(({ isNew }) => !isNew);
  return {
    title,
    count: fresh.length > 0 ? `${fresh.length} new` : `${old.length} open, none new`,
    items: [
      ...fresh.map(({ problem }) => item(problem, problem.weight === 'stop' ? 'new' : 'new-ask')),
      ...old.map(({ problem }) => item(problem, problem.weight)),
    ],
  };
};

const item = (problem: Problem, kind: Warning): ClashItem => {
  const { sentence, mend, href } = withMend(problem);
  return { kind, sentence, href, mend };
};
