import { readAmount, readTimes } from './quantity/amount.js';
import { Rational } from './quantity/rational.js';
import { isMeasured, readUnit } from './quantity/units.js';
import { type Read, readMoreThanZero } from './reading.js';

export type Range = { amount: string; amountTo: string | null };

const cited = (text: string): string => (text.length > 40 ? `${text.slice(0, 40)}…` : text);

/**
 * A figure or a range as cooks write it (700, 1 1/2, 2–3, 2-3, 1½ to 2) as exact text, above zero and going up. Of a
 * unit of weight or volume "2 x 400" is 800; how many tins or eggs that would be is not for us to say.
 */
export const readRange = (text: string, unit = ''): Read<Range> => {
  const typed = text.trim();
  const ends = typed.split(/\s*(?:[-–—−]|\bto\b)\s*/i);
  const [low = '', high = ''] = ends;
  if (ends.length !== 2 || low === '' || high === '') return figure(typed, unit);
  const [from, to] = [readMoreThanZero(low), readMoreThanZero(high)];
  if ('sentence' in from) return from;
  if ('sentence' in to) return to;
  if (Rational.parse(to.value).compare(Rational.parse(from.value)) > 0)
    return { value: { amount: from.value, amountTo: to.value } };
  // "1-1/2" is one and a half: a hyphen before a fraction joins it to the whole.
  const mixed = /^\d+-\d+\/\d+$/.test(typed) ? readAmount(typed.replace('-', ' ')) : undefined;
  if (mixed && 'amount' in mixed) return { value: { amount: mixed.amount, amountTo: null } };
  return { sentence: `A range goes up, such as 2–3. You entered ${cited(typed)}.` };
};

const figure = (typed: string, unit: string): Read<Range> => {
  const times = isMeasured(unit) ? readTimes(typed) : undefined;
  const read = times && 'amount' in times ? readMoreThanZero(times.amount) : readMoreThanZero(typed);
  return 'sentence' in read ? read : { value: { amount: read.value, amountTo: null } };
};

/** The same with a unit behind it ("700 g", "2 x 400 g", "2–3 cloves", "65 %"); undefined when no unit stands there. */
export const readRangeWithUnit = (text: string): { range: Read<Range>; unit: string } | undefined => {
  const [, figures, word] = /^(.*[\d½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])\s*([a-z%][a-z .-]*)$/iu.exec(text.trim()) ?? [];
  const unit = word && readUnit(word);
  return figures && unit ? { range: readRange(figures, unit), unit } : undefined;
};
