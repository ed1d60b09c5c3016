import type { FastifyRequest } from 'fastify';
import { ticksOf } from '../../core/done.js';
import type { PrepPeriod } from '../../core/facts/prep-period.js';
import type { Answer } from '../../core/problem.js';
import { isRead, readDay } from '../../core/reading.js';
import { type PrepList, prepList } from '../../core/sheets/prep-list.js';
import { preparedOn } from '../../store/coming.js';
import { eventFacts } from '../../store/facts.js';
import { periods } from '../../store/prep-periods.js';
import type { Db } from '../../store/schema.js';
import { todayOf } from '../coming.js';
import { eventOf, type OneEvent } from '../events/event.js';
import { Refused } from '../guards.js';

/** A prep list with what is ticked on it, and the periods its days are in. */
export type Listed = { answer: Answer<PrepList>; periods: PrepPeriod[] };

export const dayAsked = (request: FastifyRequest, asked: string): string => {
  const read = readDay(asked, todayOf(request));
  if (!isRead(read)) throw new Refused(read.sentence, 404);
  return read.value;
};

/** The quoted and confirmed events that may have jobs on some days, or the one named of them, with their facts. */
export const factsOn = async (request: FastifyRequest, from: string, to: string, only: string) => {
  const { db } = request.server.house;
  const keys = (await preparedOn(db, { from, to })).filter((key) => only === '' || key === only);
  return (await eventFacts(db, keys))!;
};

/** The list of a day for every event, or for one. */
export const dayList = async (request: FastifyRequest, date: string, only: string): Promise<Listed> => {
  const { events, facts } = await factsOn(request, date, date, only);
  return withTicks(request.server.house.db, prepList(events, facts, date));
};

/** The list of all days of the event that the address names, or the one of a key. */
export const eventList = async (
  request: FastifyRequest,
  key?: string,
): Promise<Listed & { one: OneEvent }> => {
  const one = await eventOf(request, key);
  return { one, ...(await withTicks(request.server.house.db, prepList([one.event], one.facts))) };
};

/** A list with what is ticked by now. */
export const withTicks = async (db: Db, { value, problems }: Answer<PrepList>): Promise<Listed> => {
  const dates = value.days.map(({ date }) => date);
  if (dates.length === 0) return { answer: { value, problems }, periods: [] };
  const there = await periods(db, { from: dates[0]!, to: dates.at(-1)! });
  return { answer: { value: { ...value, ticks: ticksOf(there) }, problems }, periods: there };
};
