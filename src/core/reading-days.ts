import { isRead, type Read, readDay } from './reading.js';

/**
 * A day that has been, such as when a price was paid or a label read, written as days are. Without a year it is the
 * last such day up to `today`.
 */
export const readPastDay = (text: string, today: string): Read<string> => {
  const read = readDay(text, today);
  if (!isRead(read) || read.value <= today) return read;
  const thisYear = Number(today.slice(0, 4));
  if (!/\d{4}/.test(text))
    for (const year of [thisYear, thisYear - 1, thisYear - 2, thisYear - 3, thisYear - 4]) {
      const past = readDay(`${text.trim()} ${year}`, today);
      if (isRead(past) && past.value <= today) return past;
    }
  return {
    sentence: `${text.trim()} is still to come. Enter today or a day before, such as ${typedDay(today)}.`,
  };
};

const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** A day as a field holds it, "2 Dec 2026", which reads back the same. */
export const typedDay = (date: string): string =>
  `${Number(date.slice(8))} ${months[Number(date.slice(5, 7)) - 1]} ${date.slice(0, 4)}`;
