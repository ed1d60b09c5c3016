import type { Workbook } from '../facts/facts.js';
import type { NumberedPaper } from '../facts/quote.js';
import { keepable, meant } from '../rules/refuse.js';

type Fault = { path: string[]; sentence: string };
type Say = (path: string[], sentence: string) => void;

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Invoices, receipts and credits in the one order of the file. */
export const papersInOrder = (papers: readonly NumberedPaper[]): NumberedPaper[] =>
  papers.toSorted((a, b) => byText(a.kind, b.kind) || a.number - b.number);

/** Why quotes, payments and numbered papers cannot be kept, each with its place in the file. */
export const quoteFaults = (workbook: Workbook): Fault[] => {
  const { quotes, payments, numberedPapers } = workbook;
  const faults: Fault[] = [];
  const say: Say = (path, sentence) => faults.push({ path, sentence });
  const there = new Set(workbook.events.map(({ key }) => key));
  const ofEvent = (list: string, rows: readonly { event: string }[]) => {
    for (const [at, { event }] of rows.entries())
      if (!there.has(event))
        say([list, String(at), 'event'], `There is no event with the key "${event}".${meant(event, there)}`);
  };
  ofEvent('quotes', quotes);
  ofEvent('payments', payments);
  once('quotes', quotes, ({ key }) => key, 'key', 'The key stands twice: give each its own.', say);
  once('payments', payments, ({ key }) => key, 'key', 'The key stands twice: give each its own.', say);
  once('quotes', quotes, quoteName, 'number', 'This quote of the event stands twice.', say);
  once('numberedPapers', numberedPapers, paperName, 'number', 'This number stands twice.', say);
  for (const [at, { state, issued, basis, taken, offer }] of quotes.entries()) {
    const path = (field: string) => ['quotes', String(at), field];
    if ((state === 'draft') !== (issued === null))
      say(path('issued'), 'A draft has no day of issue, any other quote has one.');
    if ((issued === null) !== (basis === null))
      say(path('basis'), 'What was issued keeps what it was worked out from, a draft does not.');
    if (taken !== null && !offer.options.some(({ key }) => key === taken))
      say(path('taken'), `There is no option with the key "${taken}".`);
  }
  for (const [list, rows] of Object.entries({ quotes, payments, numberedPapers }))
    for (const [at, row] of rows.entries())
      keepable(row, '', (field, _code, sentence) => say([list, String(at), ...field.split('/')], sentence));
  return faults;
};

const quoteName = ({ event, number }: Workbook['quotes'][number]): string => `${event} ${number}`;
const paperName = ({ kind, number }: NumberedPaper): string => `${kind} ${number}`;

const once = <T>(
  list: string,
  rows: readonly T[],
  nameOf: (row: T) => string,
  field: string,
  sentence: string,
  say: Say,
): void => {
  const seen = new Set<string>();
  for (const [at, row] of rows.entries()) {
    if (seen.has(nameOf(row))) say([list, String(at), field], sentence);
    seen.add(nameOf(row));
  }
};
