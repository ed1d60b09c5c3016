import type { Event } from '../core/facts/event.js';
import type { Facts } from '../core/facts/facts.js';
import { workDays } from '../core/handled-with.js';
import { preparedOn } from './coming.js';
import { type EventFacts, eventFacts } from './facts.js';
import type { Db } from './schema.js';

/**
 * An event and the live ones that are worked on in the days of its own work, with the facts of all of them, for what
 * its dishes are handled with; the event first. undefined while there is no kitchen.
 */
export const eventsBeside = async (db: Db, event: Event, facts: Facts): Promise<EventFacts | undefined> => {
  const keys = await preparedOn(db, workDays(event, facts));
  return eventFacts(db, [event.key, ...keys.filter((key) => key !== event.key)]);
};
