import { amount } from './facts/common.js';
import type { Kitchen } from './facts/kitchen.js';
import { exact } from './quantity/amount.js';
import { Rational } from './quantity/rational.js';
import { quantity } from './quantity/units.js';
import type { Read } from './reading.js';
import { readMeasure } from './reading-measures.js';

const thousand = Rational.of(1000);

/** What a pan holds as cooks write it ("10", "10 L", "500 ml", "8 quarts"), in litres as exact text; bare figures are litres. */
export const readLitres = (text: string, { cup }: Pick<Kitchen, 'cup'>): Read<string> => {
  const bare = /^[\d\s.,/⁄∕½⅓⅔¼¾⅛]+$/u.test(text.trim());
  const read = readMeasure(bare ? `${text} l` : text, 'ml');
  if ('sentence' in read) return read;
  const litres = quantity(exact(read.value.amount), read.value.unit, cup).value.over(thousand).toString();
  if (amount.safeParse(litres).success) return { value: litres };
  return { sentence: `Enter the litres, such as 10 or 2.5. You entered ${text.trim().slice(0, 40)}.` };
};
