import { readAmount } from './quantity/amount.js';
import { Rational } from './quantity/rational.js';
import type { Read } from './reading.js';

const example = 'Enter the hours in figures, such as 4, 4.5 or 4:30.';

/** Hours of work as one writes them (4, 4.5 h, 4 1/2, 4:30, 4h30) as exact text in hours, more than zero. */
export const readHoursWorked = (text: string): Read<string> => {
  const plain = text
    .trim()
    .toLowerCase()
    .replace(/\s*(hours?|hrs?)$/, '')
    .replace(/(?<=\d)\s*h$/, '');
  if (plain === '') return { sentence: example };
  const [, whole, minutes] = /^(\d{1,4})\s*[:h]\s*([0-5]\d)(?:\s*m(?:in)?)?$/.exec(plain) ?? [];
  if (whole && minutes) return moreThanNone(Rational.of(Number(whole) * 60 + Number(minutes), 60).toString());
  const read = readAmount(plain);
  if ('sentence' in read) return { sentence: `${example} You entered ${text.trim().slice(0, 40)}.` };
  return moreThanNone(read.amount);
};

const moreThanNone = (amount: string): Read<string> =>
  Rational.parse(amount).isZero ? { sentence: `Hours are more than 0. ${example}` } : { value: amount };
