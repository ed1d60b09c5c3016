import { Temporal } from 'temporal-polyfill';
import type { Course, Event } from './facts/event.js';
import { type Weekday, weekdays } from './facts/kitchen.js';

/** A calendar day `days` later, or earlier when negative; "2026-11-28" and the like. */
export const addDays = (date: string, days: number): string =>
  // Days in UTC are all of one length; every step of every dish asks, and this is many times quicker than a calendar.
  days === 0 ? date : new Date(Date.parse(date) + days * 86_400_000).toISOString().slice(0, 10);

/** Whole days from one calendar day to another. */
export const daysBetween = (from: string, to: string): number =>
  Temporal.PlainDate.from(from).until(Temporal.PlainDate.from(to)).days;

export const weekdayOf = (date: string): Weekday => weekdays[Temporal.PlainDate.from(date).dayOfWeek - 1]!;

/** ISO 8601 week number. */
export const weekOf = (date: string): number => Temporal.PlainDate.from(date).weekOfYear!;

/** The Monday of a day's week. */
export const mondayOf = (date: string): string => addDays(date, 1 - Temporal.PlainDate.from(date).dayOfWeek);

/** Today and the time on the kitchen's clock at an instant in milliseconds since 1970. */
export const localTime = (epochMilliseconds: number, timeZone: string): { date: string; time: string } => {
  const now = Temporal.Instant.fromEpochMilliseconds(epochMilliseconds).toZonedDateTimeISO(timeZone);
  return { date: now.toPlainDate().toString(), time: now.toPlainTime().toString({ smallestUnit: 'minute' }) };
};

const offsets = new Map<string, number>();

/** How far a zone's clock is ahead of UTC as a day begins, in nanoseconds. */
const offsetOn = (date: string, timeZone: string): number => {
  const key = `${timeZone} ${date}`;
  const offset =
    offsets.get(key) ?? Temporal.PlainDate.from(date).toZonedDateTime(timeZone).offsetNanoseconds;
  if (offsets.size < 5000) offsets.set(key, offset);
  return offset;
};

/**
 * The time on a zone's clock that lies a length of real minutes before another; both in minutes from midnight of a day.
 * In the night the clock goes on or back it is an hour earlier or later than the figures alone would say.
 */
export const minutesBefore = (time: number, length: number, date: string, timeZone: string): number => {
  const start = time - length;
  const dayOf = (minutes: number) => addDays(date, Math.floor(minutes / 1440));
  const last = dayOf(time);
  if (offsetOn(dayOf(start), timeZone) === offsetOn(addDays(last, 1), timeZone)) return start;
  const plainTime = Temporal.PlainTime.from(clockOf(time));
  const from = Temporal.PlainDate.from(last)
    .toZonedDateTime({ timeZone, plainTime })
    .subtract({ minutes: length });
  return daysBetween(date, from.toPlainDate().toString()) * 1440 + from.hour * 60 + from.minute;
};

/** The calendar day a course is served on. */
export const servedOn = (event: Event, course: Course): string =>
  course.dayAfter ? addDays(event.date, 1) : event.date;

/** Minutes from midnight of the event's day to a course's service, on the kitchen's clock. */
export const serviceMinutes = (course: Course): number =>
  minutesOf(course.time) + (course.dayAfter ? 1440 : 0);

export const minutesOf = (clock: string): number => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));

/** Minutes from midnight as a clock time, whatever day they fall on. */
export const clockOf = (minutes: number): string => {
  const m = ((minutes % 1440) + 1440) % 1440;
  return `${String(Math.floor(m / 60)).padStart(2, '0')}:${String(m % 60).padStart(2, '0')}`;
};

const monthNames = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** A calendar day inside a sentence: "20 Nov 2026". */
export const dayInWords = (date: string): string =>
  `${Number(date.slice(8))} ${monthNames[Number(date.slice(5, 7)) - 1]} ${date.slice(0, 4)}`;
