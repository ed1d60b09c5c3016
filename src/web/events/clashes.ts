import type { EventChange } from '../../core/event-change.js';
import type { Problem } from '../../core/problem.js';
import { pageOf, whereMended } from '../links.js';
import type { Warning } from '../marks.js';

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

const item = ({ sentence, subject, code }: Problem, kind: Warning): ClashItem => ({
  kind,
  sentence,
  href: mends[code] === coverage ? `${pageOf('event', subject.key)}/allergens#guests` : whereMended(subject),
  mend: mends[code] ?? `Open ${subject.name}`,
});

const coverage = 'See who can eat what';

/** What the button beside a problem does, by the problem's code. */
const mends: Record<string, string> = {
  'nothing-to-eat': coverage,
  'not-known': coverage,
  'may-contain': coverage,
  'not-answered': 'Open diets',
  'too-many-answers': 'Open diets',
  'oven-clash': 'Change menu',
  'label-not-read': 'Read the label',
  'no-price': 'Add a price',
  'no-preferred-pack': 'Choose a pack',
  'guessed-price': 'Enter the price',
  'to-taste': 'Open the recipe',
  'no-yield': 'Add the yield',
  'no-density': 'Add the density',
  'no-weight': 'Add the weight',
};
