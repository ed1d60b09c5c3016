import type { FastifyRequest } from 'fastify';
import { type Mark, marksFor } from '../core/marks.js';
import { coming } from '../store/coming.js';
import { inZone } from './clock.js';
import { formatFor } from './format.js';

/** Today on the kitchen's clock. */
export const todayOf = ({ server, kitchen }: FastifyRequest): string =>
  inZone(server.house.clock(), kitchen.timeZone).date;

/** The letters that the events of today and later bear on every page, by key. */
export const marksNow = async (request: FastifyRequest): Promise<Map<string, Mark>> => {
  const today = todayOf(request);
  return marksFor(await coming(request.server.house.db, today), today);
};

/** "Printed Wed 2 Dec 2026, 10:20.", for the foot of a paper. */
export const printedNow = ({ server, kitchen }: FastifyRequest): string => {
  const { date, time } = inZone(server.house.clock(), kitchen.timeZone);
  return `Printed ${formatFor(kitchen).dateYear(date)}, ${time}.`;
};
