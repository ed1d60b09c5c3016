import type { Event } from './facts/event.js';

/** How an event is told apart on every page and sheet: a letter, and for the first three a fill. */
export type Mark = { letter: string; fill: 'solid' | 'outline' | 'hatch' | 'plain' | 'dotted' };

type Marked = Pick<Event, 'key' | 'date' | 'state' | 'archived'>;

const fills = ['solid', 'outline', 'hatch'] as const;
const open = (event: Marked) => event.state === 'enquiry' || event.state === 'quoted';
const over = (event: Marked) => event.archived || ['done', 'postponed', 'cancelled'].includes(event.state);

/**
 * Letters for the events given, A first by date and then by key: confirmed ones from today on, then enquiries and
 * open quotes, dotted. What is over or put off has none.
 */
export const marksFor = (events: readonly Marked[], today: string): Map<string, Mark> => {
  const coming = events
    .filter((event) => !over(event) && event.date >= today)
    .sort((a, b) => Number(open(a)) - Number(open(b)) || compare(a.date, b.date) || compare(a.key, b.key));
  const marks = new Map<string, Mark>();
  for (const [i, event] of coming.entries()) {
    const fill = open(event) ? 'dotted' : (fills[i] ?? 'plain');
    marks.set(event.key, { letter: letters(i), fill });
  }
  return marks;
};

const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);

/** 0 is A, 25 is Z, 26 is AA. */
const letters = (i: number): string => {
  const last = String.fromCharCode(65 + (i % 26));
  return i < 26 ? last : letters(Math.floor(i / 26) - 1) + last;
};
