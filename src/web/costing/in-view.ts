import type { FastifyRequest } from 'fastify';
import { addDays, mondayOf } from '../../core/calendar.js';
import type { Event } from '../../core/facts/event.js';
import type { Facts } from '../../core/facts/facts.js';
import type { CostView } from '../../core/whole-cost/whole-cost.js';
import { type EventRow, list } from '../../store/events.js';
import { eventFacts } from '../../store/facts.js';
import type { OneEvent } from '../events/event.js';

/** In which view a costing is asked for, with the events that its packs are bought for together. */
export type InView = { view: CostView; alone: boolean; beside: readonly Event[]; facts: Facts };

/**
 * Food as used, unless the address asks for whole packs. Those are bought for all parties of a week together, so that
 * their shares add up whichever is looked at, or for one alone where the address says so.
 */
export const viewAsked = async (
  request: FastifyRequest,
  { event, facts }: OneEvent,
  asked: unknown = (request.query as Record<string, unknown>).view,
): Promise<InView> => {
  if (asked !== 'bought' && asked !== 'bought-alone') return { view: 'used', alone: true, beside: [], facts };
  const { db } = request.server.house;
  const monday = mondayOf(event.date);
  const week = asked === 'bought' ? await list(db, { from: monday, to: addDays(monday, 6) }) : [];
  const keys = week.filter((row) => isBoughtFor(row) && row.key !== event.key).map(({ key }) => key);
  const together = keys.length > 0 ? await eventFacts(db, [event.key, ...keys]) : undefined;
  if (!together) return { view: 'bought', alone: asked === 'bought-alone', beside: [], facts };
  const [, ...beside] = together.events;
  return { view: 'bought', alone: false, beside, facts: together.facts };
};

const isBoughtFor = ({ archived, state, dishes }: EventRow): boolean =>
  !archived && dishes > 0 && ['quoted', 'confirmed', 'done'].includes(state);

/** A view as an address says it; nothing for food as used. */
export const nameOfView = ({ view, alone }: InView): string =>
  view === 'used' ? '' : alone ? 'bought-alone' : 'bought';

export const withView = (address: string, view: string): string =>
  view === '' ? address : `${address}?view=${encodeURIComponent(view)}`;
