import { localTime } from '../core/calendar.js';
import type { Event, Served } from '../core/facts/event.js';
import { loadFacts } from './facts.js';
import type { Saving } from './rows.js';
import type { Trx } from './schema.js';

/** An event that becomes done keeps the facts as they stand; one that is reopened drops them. */
export const withServed = async <D>(trx: Trx, before: D | undefined, doc: D, { at }: Saving): Promise<D> => {
  const event = doc as unknown as Event;
  if (event.state !== 'done') return { ...doc, served: null };
  const wasDone = (before as Event | undefined)?.state === 'done';
  if (wasDone || event.served) return doc;
  return { ...doc, served: await servedNow(trx, event, at) };
};

/** The facts of an event as they stand; null while there is no kitchen. */
export const servedNow = async (trx: Trx, event: Event, at: Date): Promise<Served | null> => {
  const recipes = event.courses.flatMap(({ dishes }) => dishes.map(({ recipe }) => recipe));
  const ingredients = event.guests.flatMap(({ avoids }) => avoids);
  const facts = await loadFacts(trx, { recipes, places: [event.place], ingredients });
  if (!facts) return null;
  return {
    date: localTime(at.getTime(), facts.kitchen.timeZone).date,
    kitchen: facts.kitchen,
    places: [...facts.places.values()],
    ingredients: [...facts.ingredients.values()],
    recipes: [...facts.recipes.values()],
  };
};
