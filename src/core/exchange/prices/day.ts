import { Temporal } from 'temporal-polyfill';
import type { PriceList } from '../../facts/price-list.js';
import { isRead, type Read, readDay } from '../../reading.js';
import { cited } from './figure.js';

const slashed = /^(\d{1,2})[/.-](\d{1,2})[/.-](\d{4}|\d{2})(?:[ T]\d{1,2}:.*)?$/;
const packed = /^(\d{4})(\d{2})(\d{2})$/;

/** The parts of a date whose order a list must say, such as 4/12/2026; undefined for any other. */
export const slashedDay = (text: string): { first: number; second: number } | undefined => {
  const found = slashed.exec(text.trim());
  return found ? { first: Number(found[1]), second: Number(found[2]) } : undefined;
};

/** The day of a price as a list writes it; one that is still to come is refused. */
export const listDay = (
  text: string,
  { days, today }: { days: PriceList['days']; today: string },
): Read<string> => {
  const read = dayIn(text.trim(), days, today);
  if (!isRead(read)) return { sentence: `The date ${cited(text)} is not a day.` };
  return read.value > today ? { sentence: `The date ${cited(text)} is still to come.` } : read;
};

const dayIn = (text: string, days: PriceList['days'], today: string): Read<string> => {
  const found = slashed.exec(text);
  if (found) {
    const [first, second] = [Number(found[1]), Number(found[2])];
    const year = Number(found[3]!.length === 2 ? `20${found[3]}` : found[3]);
    return days === 'day-first' ? day(year, second, first) : day(year, first, second);
  }
  const whole = packed.exec(text);
  if (whole) return day(Number(whole[1]), Number(whole[2]), Number(whole[3]));
  return /\d{4}/.test(text) ? readDay(text.replace(/[ T]\d{1,2}:.*$/, ''), today) : { sentence: '' };
};

const day = (year: number, month: number, day: number): Read<string> => {
  try {
    return { value: Temporal.PlainDate.from({ year, month, day }, { overflow: 'reject' }).toString() };
  } catch {
    return { sentence: '' };
  }
};
