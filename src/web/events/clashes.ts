import type { EventChange } from '../../core/event-change.js';
import type { Problem } from '../../core/problem.js';
import type { Warning } from '../marks.js';
import { together, toSettle, withMend } from '../mends.js';
import { type OutdatedPaper, printAgain } from '../printed/outdated.js';
import type { QuoteNeed } from '../quotes/need.js';

/** What one button mends; nothing is there to press where a party is over and its figures are kept. */
export type ClashItem = {
  kind: Warning;
  sentences: string[];
  href: string;
  mend: string;
  /** The last number of the event's quotes, where pressing the button drafts the next. */
  after?: number;
};
/** What must be settled, worst first, beside the page of an event. */
export type Clashes = { title: string; count: string; items: ClashItem[]; none?: string };

/** What must be settled as things stand. */
export const clashes = (problems: readonly Problem[]): Clashes => {
  const open = problems.filter(toSettle);
  return {
    title: 'Clashes',
    count: open.length === 0 ? '' : `${open.length} open`,
    items: inOne(open.map((problem) => item(problem, problem.weight))),
  };
};

/** The same with the printed papers that no longer hold, after the stops. */
export const withPapers = (found: Clashes, papers: readonly OutdatedPaper[]): Clashes => {
  if (papers.length === 0) return found;
  const stops = found.items.filter(({ kind }) => kind === 'stop');
  const items = papers.map(
    ({ sentence, href }): ClashItem => ({ kind: 'changed', sentences: [sentence], href, mend: printAgain }),
  );
  const open = found.items.flatMap(({ sentences }) => sentences).length + papers.length;
  return { ...found, count: `${open} open`, items: [...stops, ...items, ...found.items.slice(stops.length)] };
};

/** The same with the quote that is needed because the accepted one does not hold any more, after the stops. */
export const withQuote = (found: Clashes, need: QuoteNeed | undefined): Clashes => {
  if (!need) return found;
  const { sentence, href, after, next } = need;
  const stops = found.items.filter(({ kind }) => kind === 'stop');
  const item: ClashItem = { kind: 'ask', sentences: [sentence], href, mend: `Draft quote ${next}`, after };
  const open = found.items.flatMap(({ sentences }) => sentences).length + 1;
  return { ...found, count: `${open} open`, items: [...stops, item, ...found.items.slice(stops.length)] };
};

/** What was open when a party's figures were kept. Its own guests can still be changed, what it was made of cannot. */
export const leftOpen = (problems: readonly Problem[]): Clashes => {
  const { items, ...rest } = clashes(problems);
  return {
    ...rest,
    title: 'Left open',
    items: items.map((one) => (isOfEvent(one) ? one : { ...one, mend: '' })),
  };
};

const isOfEvent = ({ href }: ClashItem): boolean => href.startsWith('/events/');

/** What must be settled after a change: what is new first, then the rest, each worst first. */
export const clashesAfter = (title: string, { problems }: Pick<EventChange, 'problems'>): Clashes => {
  const open = problems.filter(({ problem }) => toSettle(problem));
  const fresh = open.filter(({ isNew }) => isNew);
  const old = open.filter(({ isNew }) => !isNew);
  return {
    title,
    count: fresh.length > 0 ? `${fresh.length} new` : `${old.length} open, none new`,
    items: inOne([
      ...fresh.map(({ problem }) => item(problem, problem.weight === 'stop' ? 'new' : 'new-ask')),
      ...old.map(({ problem }) => item(problem, problem.weight)),
    ]),
  };
};

const inOne = (items: readonly ReturnType<typeof item>[]): ClashItem[] => together(items, ({ kind }) => kind);

const item = (problem: Problem, kind: Warning) => {
  const { sentence, mend, href } = withMend(problem);
  return { kind, sentence, href, mend };
};
