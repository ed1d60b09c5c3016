import { type EatenAverage, eatenAverages, type HoursAverage, hoursAverages } from '../../core/averages.js';
import { eventFacts } from '../../store/facts.js';
import { notedParties } from '../../store/parties-held.js';
import type { Db } from '../../store/schema.js';

export type Averages = {
  eaten: ReadonlyMap<string, EatenAverage>;
  kinds: HoursAverage[];
  lines: HoursAverage[];
};

/** What the last parties taught: portions eaten by recipe, hours by kind of cost and by line. */
export const averagesNow = async (db: Db): Promise<Averages> => {
  const keys = await notedParties(db);
  const found = keys.length > 0 ? await eventFacts(db, keys) : undefined;
  if (!found) return { eaten: new Map(), kinds: [], lines: [] };
  return {
    eaten: eatenAverages(found.events, found.facts),
    kinds: hoursAverages(found.events, 'kind'),
    lines: hoursAverages(found.events, 'line'),
  };
};
