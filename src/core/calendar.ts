import { Temporal } from 'temporal-polyfill';
import type { Course, Event } from './facts/event.js';
import { type Weekday, weekdays } from './facts/kitchen.js';

const dayLength = 86_400_000;
const numbers = new Map<string, number>();
const names = new Map<number, string>();

/** A calendar day `days` later, or earlier when negative; "2026-11-28" and the like. */
export const addDays = (date: string, days: number): string => {
  if (days === 0) return date;
  // Every step of every dish asks, of the same few days; in UTC they are all of one length.
  const number = remembered(numbers, date, () => Date.parse(date) / dayLength) + days;
  return remembered(names, number, () => new Date(number * dayLength).toISOString().slice(0, 10));
};

const remembered = <K, V>(known: Map<K, V>, key: K, work: () => V): V => {
  const there = known.get(key);
  if (there !== undefined) return there;
  const made = work();
  if (known.size < 20_000) known.set(key, made);
  return made;
};

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
const offsetOn = (date: string, timeZone: string): number =>
  remembered(
    offsets,
    `${timeZone} ${date}`,
    () => Temporal.PlainDate.from(date).toZonedDateTime(timeZone).offsetNanoseconds,
  );

/** The time so many real minutes before another; both in minutes from midnight of a day. */
export type Back = (time: number, length: number) => number;

/**
 * Counts back real minutes on a zone's clock from a day. In the night the clock goes on or back it is an hour earlier
 * or later than the figures alone would say.
 */
export const backFrom = (date: string, timeZone: string): Back => {
  const steady = new Map<number, boolean>();
  const isSteady = (first: number, last: number): boolean =>
    remembered(
      steady,
      first * 1000 + last,
      () => offsetOn(addDays(date, first), timeZone) === offsetOn(addDays(date, last + 1), timeZone),
    );
  return (time, length) => {
    const start = time - length;
    const last = Math.floor(time / 1440);
    if (isSteady(Math.floor(start / 1440), last)) return start;
    const plainTime = Temporal.PlainTime.from(clockOf(time));
    const from = Temporal.PlainDate.from(addDays(date, last))
      .toZonedDateTime({ timeZone, plainTime })
      .subtract({ minutes: length });
    return daysBetween(date, from.toPlainDate().toString()) * 1440 + from.hour * 60 + from.minute;
  };
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
