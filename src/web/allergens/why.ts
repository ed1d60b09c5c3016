import type { CourseCover, CoverageCell, CoverageRow } from '../../core/coverage.js';
import { apartWords, shortWords } from '../../core/coverage-problems.js';
import type { Reason, Verdict } from '../../core/diets.js';
import type { Event } from '../../core/facts/event.js';

/** What stands against a dish for a guest, or what to mind with it. */
export type Why = { dish: string; words: string };

const verdictWords: Record<Exclude<Verdict, 'yes'>, string> = {
  no: 'no, because of',
  unknown: 'not known, because of',
  may: 'may contain it through',
};

/** Dish by dish what stands against it, then the portions that do not reach and what is usually minded. */
export const whyOf = (row: CoverageRow, event: Event): Why[] => [
  ...row.cells.flatMap((cell) => whyNot(cell, row)),
  ...row.courses.flatMap((course) => tooFew(course, event)),
  ...row.cautions.map((words) => ({ dish: 'Mind', words })),
];

const whyNot = (cell: CoverageCell, { guest, who }: CoverageRow): Why[] => {
  const { name, verdict, reasons, counts } = cell;
  const apart = counts ? [] : [{ dish: name, words: apartWords(name, who, guest?.name !== '') }];
  const hardest = reasons[0]?.verdict;
  if (!hardest || hardest === 'yes') return apart;
  const because = [...new Set(reasons.filter((one) => one.verdict === hardest).map(reasonWords))].join('; ');
  // To whom traces do not matter a may-contain is a yes, and its reason stays in sight.
  const accepted = verdict === 'yes' ? '; traces do not matter to them' : '';
  return [{ dish: name, words: `${verdictWords[hardest]} ${because}${accepted}` }, ...apart];
};

/** "Parmesan, through Pesto": the ingredient, and the components it comes through. */
const reasonWords = ({ ingredient, through }: Reason): string => {
  const way = through.slice(1).map(({ name }) => name);
  return way.length > 0 ? `${ingredient.name}, through ${way.join(', then ')}` : ingredient.name;
};

const tooFew = ({ name, few }: CourseCover, event: Event): Why[] =>
  few ? [{ dish: name, words: shortWords(few, event) }] : [];
