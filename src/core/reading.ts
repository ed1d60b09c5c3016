import { Temporal } from 'temporal-polyfill';
import { minorDigits } from './money.js';
import { readAmount } from './quantity/amount.js';
import { Rational } from './quantity/rational.js';
import { readUnit } from './quantity/units.js';

/** What was read, or the sentence that says what to type instead. */
export type Read<T> = { value: T } | { sentence: string };

export const isRead = <T>(read: Read<T>): read is { value: T } => 'value' in read;

const refuse = (sentence: string): { sentence: string } => ({ sentence });

/** Cuts what was typed to a length that fits into a sentence. */
const cited = (text: string): string =>
  text.trim().length > 40 ? `${text.trim().slice(0, 40)}…` : text.trim();

/** A whole number between two bounds, such as guests; `what` names it in the sentence. */
export const readWhole = (text: string, what: string, least: number, most: number): Read<number> => {
  const plain = text.trim().replace(/(\d)[ ,](?=\d{3}\b)/g, '$1');
  if (plain === '')
    return refuse(`Enter ${what} in figures, such as ${Math.min(most, Math.max(least, 40))}.`);
  if (/^[-−]\d/.test(plain))
    return refuse(`${capital(what)} can't be below zero. You entered ${cited(text)}.`);
  if (/^\d+[.,]\d+$/.test(plain))
    return refuse(`${capital(what)} must be a whole number. You entered ${cited(text)}.`);
  if (!/^\d+$/.test(plain))
    return refuse(`Enter ${what} in figures, such as ${Math.min(most, Math.max(least, 40))}.`);
  const value = Number(plain);
  if (value < least || value > most)
    return refuse(`${capital(what)} must be between ${least} and ${most}. You entered ${cited(text)}.`);
  return { value };
};

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** A per cent as exact text; a slipped decimal is guessed at. `most` is the largest that makes sense. */
export const readPercent = (text: string, what: string, most = 100): Read<string> => {
  const read = readAmount(text.trim().replace(/\s*%$/, ''));
  if ('sentence' in read)
    return refuse(
      `Enter ${what} as a per cent, such as 10. ${text.trim() ? `You entered ${cited(text)}.` : ''}`.trim(),
    );
  const value = Rational.parse(read.amount);
  if (value.compare(Rational.of(most)) <= 0) return { value: read.amount };
  const guess = value.over(Rational.of(10));
  const mean = guess.compare(Rational.of(most)) <= 0 ? ` Did you mean ${guess.toString()}?` : '';
  return refuse(`${capital(what)} must be between 0 and ${most}. You entered ${cited(text)}.${mean}`);
};

/** Money as typed ("3.40", "£3.40", "3,40") in whole minor units of a currency; finer than its coins is refused. */
export const readMoney = (text: string, currency: string): Read<number> => {
  const digits = minorDigits(currency);
  const example = Rational.of(340, 100).toFixed(digits);
  const plain = text
    .trim()
    .replace(/^[^\d.,-]+|[^\d.,]+$/g, '')
    .trim();
  if (plain === '') return refuse(`Enter a price in figures, such as ${example}.`);
  const read = readAmount(plain);
  if ('sentence' in read)
    return refuse(
      /two ways/.test(read.sentence)
        ? read.sentence
        : `Enter a price in figures, such as ${example}. You entered ${cited(text)}.`,
    );
  const minor = Rational.parse(read.amount).times(Rational.of(10 ** digits));
  if (!minor.isWhole)
    return refuse(`${currency} has ${digits} figures after the point. You entered ${cited(text)}.`);
  if (minor.compare(Rational.of(1_000_000_000_000)) > 0)
    return refuse(`A price of ${cited(text)} is more than the workbook holds.`);
  return { value: Number(minor.n) };
};

/** A time of day as cooks write it (18:30, 1830, 6.30pm, 7 pm, noon) on the 24-hour clock. */
export const readClock = (text: string): Read<string> => {
  const plain = text.trim().toLowerCase();
  if (plain === '') return refuse('Enter a time, such as 18:30.');
  if (plain === 'noon' || plain === 'midday') return { value: '12:00' };
  if (plain === 'midnight') return { value: '00:00' };
  const found = /^(\d{1,2})(?:[:.h ]?(\d{2}))?\s*(am|pm|a\.m\.|p\.m\.)?$/.exec(plain);
  if (!found) return refuse(`Enter a time, such as 18:30 or 6.30pm. You entered ${cited(text)}.`);
  const half = found[3]?.startsWith('p') ? 'pm' : found[3] ? 'am' : undefined;
  let hour = Number(found[1]);
  const minute = Number(found[2] ?? '0');
  if (half && (hour < 1 || hour > 12))
    return refuse(`${cited(text)} is not a time. Enter one such as 18:30.`);
  if (half === 'pm' && hour < 12) hour += 12;
  if (half === 'am' && hour === 12) hour = 0;
  if (hour > 23 || minute > 59) return refuse(`${cited(text)} is not a time. Enter one such as 18:30.`);
  return { value: `${String(hour).padStart(2, '0')}:${String(minute).padStart(2, '0')}` };
};

const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

/**
 * A day as cooks write it (2026-12-04, 4 Dec, Fri 4 December 2026, 4/12/2026 day first) as "2026-12-04". Without a
 * year it is the first such day from `today` on.
 */
export const readDay = (text: string, today: string): Read<string> => {
  const plain = text
    .trim()
    .toLowerCase()
    .replace(/^(mon|tue|wed|thu|fri|sat|sun)[a-z]*,?\s+/, '');
  const example = 'such as 4 Dec or 2026-12-04';
  if (plain === '') return refuse(`Enter the day, ${example}.`);
  if (plain === 'today') return { value: today };
  if (plain === 'tomorrow') return { value: Temporal.PlainDate.from(today).add({ days: 1 }).toString() };
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(plain);
  if (iso) return dayOf(Number(iso[1]), Number(iso[2]), Number(iso[3]), text);
  const slashes = /^(\d{1,2})[/.](\d{1,2})[/.](\d{4})$/.exec(plain);
  if (slashes) return dayOf(Number(slashes[3]), Number(slashes[2]), Number(slashes[1]), text);
  const named =
    /^(\d{1,2})(?:st|nd|rd|th)?\s+([a-z]{3})[a-z]*\.?,?(?:\s+(\d{4}))?$/.exec(plain) ??
    swap(/^([a-z]{3})[a-z]*\.?\s+(\d{1,2})(?:st|nd|rd|th)?,?(?:\s+(\d{4}))?$/.exec(plain));
  const month = named ? months.indexOf(named[2]!) + 1 : 0;
  if (!named || month === 0) return refuse(`Enter the day, ${example}. You entered ${cited(text)}.`);
  if (named[3]) return dayOf(Number(named[3]), month, Number(named[1]), text);
  const year = Number(today.slice(0, 4));
  for (const y of [year, year + 1, year + 2, year + 3, year + 4]) {
    const read = dayOf(y, month, Number(named[1]), text);
    if (isRead(read) && read.value >= today) return read;
  }
  return refuse(`${cited(text)} is not a day. Enter one ${example}.`);
};

const swap = (found: RegExpExecArray | null) => found && [found[0], found[2], found[1], found[3]];

const dayOf = (year: number, month: number, day: number, text: string): Read<string> => {
  try {
    return { value: Temporal.PlainDate.from({ year, month, day }, { overflow: 'reject' }).toString() };
  } catch {
    return refuse(`${cited(text)} is not a day of the calendar.`);
  }
};

/** An amount as exact text, more than zero. */
export const readMoreThanZero = (text: string): Read<string> => {
  const read = readAmount(text);
  if ('sentence' in read) return read;
  if (Rational.parse(read.amount).isZero) return refuse('Enter a quantity above zero, such as 700 or 3/4.');
  return { value: read.amount };
};

/** A unit a cook's word means. */
export const readUnitWord = (text: string): Read<string> => {
  const unit = readUnit(text);
  return unit
    ? { value: unit }
    : refuse(`Enter a unit such as g, ml, tsp or each. You entered ${cited(text)}.`);
};
