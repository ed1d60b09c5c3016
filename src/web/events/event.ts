import type { FastifyRequest } from 'fastify';
import type { Event, EventState } from '../../core/facts/event.js';
import { type Facts, factsOf } from '../../core/facts/facts.js';
import type { Mark } from '../../core/marks.js';
import { eventFacts } from '../../store/facts.js';
import { marksNow } from '../coming.js';
import { formatFor } from '../format.js';
import { Refused } from '../guards.js';
import { param } from '../house.js';

/** The event of an address with what its sheets are calculated from. */
export type OneEvent = { event: Event; facts: Facts; revision: number };

/** The event that the address names; one that is gone is not found. */
export const eventOf = async (request: FastifyRequest, key = param(request, 'key')): Promise<OneEvent> => {
  const found = await eventFacts(request.server.house.db, [key]);
  const stored = found?.stored[0];
  if (!found || !stored)
    throw new Refused('There is no event at this address: it was removed, or never was.', 404);
  return { event: stored.doc, facts: found.facts, revision: stored.revision };
};

/** What stands at the head of every page of an event. */
export type EventHead = { key: string; name: string; day: string; mark: Mark | undefined; sub: string };

export const headOf = async (request: FastifyRequest, { event, facts }: OneEvent): Promise<EventHead> => {
  const marks = await marksNow(request);
  const place = factsOf(event, facts).places.get(event.place)?.name;
  const said = [
    event.client,
    place,
    event.state === 'enquiry' ? 'enquiry, so not on the prep list yet' : stateWords[event.state],
    event.archived && 'archived',
  ];
  return {
    key: event.key,
    name: event.name,
    day: formatFor(request.kitchen).date(event.date),
    mark: marks.get(event.key),
    sub: said.filter(Boolean).join(', '),
  };
};

export const stateWords: Record<EventState, string> = {
  enquiry: 'enquiry',
  quoted: 'quoted',
  confirmed: 'confirmed',
  done: 'done',
  postponed: 'postponed',
  cancelled: 'cancelled',
};
