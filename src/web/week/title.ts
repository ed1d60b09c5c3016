import type { Format } from '../format.js';

/** What the week holds, in words: "Three parties by Sunday", "One party on Friday", "No party this week". */
export const weekTitle = (dates: readonly string[], from: string, today: string, f: Format): string => {
  const last = dates.at(-1);
  const which = from === today ? 'this week' : `in the week of ${f.dayMonth(from)}`;
  if (last === undefined) return `No party ${which}`;
  const parties = `${f.inWords(dates.length)} ${dates.length === 1 ? 'party' : 'parties'}`;
  if (from !== today) return `${parties} ${which}`;
  if (last === today) return `${parties} today`;
  return dates.every((date) => date === last)
    ? `${parties} on ${f.weekday(last)}`
    : `${parties} by ${f.weekday(last)}`;
};
