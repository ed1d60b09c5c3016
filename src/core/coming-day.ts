import { addDays, daysBetween, weekdayOf } from './calendar.js';
import { type Weekday, weekdays } from './facts/kitchen.js';
import { isRead, readDay } from './reading.js';

/** A day to come; or why it is none: a sentence, a day that is past, or a day that is another weekday than said. */
export type ComingDay =
  | { value: string }
  | { sentence: string }
  | { past: string; guesses: string[] }
  | { date: string; said: Weekday; guesses: string[] };

/**
 * A day to come as people type it. A day that has just passed is never taken for next year's by itself, and one whose
 * weekday does not fit is asked about; the guesses are days that would fit, nearest first. Without a year a day more
 * than half a year gone means the next one.
 */
export const readComingDay = (text: string, today: string): ComingDay => {
  const read = readDay(text, today);
  if (!isRead(read)) return read;
  const said = saidWeekday(text);
  const dated = /\d{4}/.test(text) || !/\d/.test(text);
  const before = dated ? undefined : yearBefore(read.value);
  const passed = dated && read.value < today ? read.value : before && justPassed(before, today);
  if (passed && (!said || said === weekdayOf(passed) || dated))
    return { past: passed, guesses: after(passed, today, said) };
  if (!said || weekdayOf(read.value) === said) return read;
  return { date: read.value, said, guesses: around(read.value, said, today) };
};

const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

const saidWeekday = (text: string): Weekday | undefined => {
  const word = /^\s*([a-z]{3})[a-z]*,?\s+\S/i.exec(text)?.[1]?.toLowerCase();
  return weekdays.find((day) => day === word);
};

const yearBefore = (date: string): string | undefined => {
  const year = String(Number(date.slice(0, 4)) - 1);
  return date.endsWith('-02-29') ? undefined : `${year}${date.slice(4)}`;
};

const justPassed = (date: string, today: string): string | undefined => {
  const days = daysBetween(date, today);
  return days > 0 && days <= 183 ? date : undefined;
};

/** The next two days of a past day's weekday; where no weekday was said, the same day of a later year as well. */
const after = (past: string, today: string, said: Weekday | undefined): string[] => {
  const next = addDays(past, Math.ceil(daysBetween(past, today) / 7) * 7);
  const later = said ? [] : comingYear(past, today);
  return [next, addDays(next, 7), ...later];
};

const comingYear = (past: string, today: string): string[] => {
  const read = readDay(`${Number(past.slice(8))} ${months[Number(past.slice(5, 7)) - 1]}`, today);
  return isRead(read) ? [read.value] : [];
};

/** The day as written, and the said weekday nearest to it that is still to come. */
const around = (date: string, said: Weekday, today: string): string[] => {
  const nearest = [-3, -2, -1, 1, 2, 3]
    .map((days) => addDays(date, days))
    .find((day) => weekdayOf(day) === said && day >= today);
  return nearest ? [date, nearest].sort() : [date];
};
