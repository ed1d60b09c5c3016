import { amount as stored } from '../facts/common.js';
import { Rational } from './rational.js';

const glyphs: Record<string, string> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/**
 * An amount as a cook writes it (3/4, ¾, 1 1/2, 1½, 1,5, 0.75) as exact text, or the sentence that says what to
 * type instead. A comma before exactly three figures could mean thousands, so it is asked about, never guessed.
 */
export const readAmount = (text: string): { amount: string } | { sentence: string } => {
  const asked = text.trim();
  if (asked === '') return { sentence: 'Enter a quantity, such as 700 or 3/4.' };
  const plain = asked
    .replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]/g, (glyph) => ` ${glyphs[glyph]}`)
    .replace(/[⁄∕]/g, '/')
    .replace(/\s*\/\s*/g, '/')
    .replace(/\s+/g, ' ')
    .trim();
  if (/^[-−]/.test(plain)) return { sentence: `A quantity is never below zero. You entered ${asked}.` };
  const thousands = /^([1-9]\d{0,2}),(\d{3})$/.exec(plain);
  if (thousands) {
    const [, whole, rest] = thousands;
    return { sentence: `${asked} can be read two ways. Type ${whole}${rest}, or ${whole}.${rest}.` };
  }
  const range = /^(\d+(?:[.,/]\d+)?) ?[-–—] ?(\d+(?:[.,/]\d+)?)$/.exec(plain);
  if (range) return { sentence: `${asked} is two figures. Type one of them, ${range[1]} or ${range[2]}.` };
  const decimal = plain.replace(/^(\d+),(\d+)$/, '$1.$2').replace(/^\./, '0.');
  if (/^\d{1,12}(\.\d{1,9})?$/.test(decimal)) return { amount: Rational.parse(decimal).toString() };
  const mixed = /^(?:(\d{1,9}) )?(\d{1,9})\/(\d{1,9})$/.exec(plain);
  if (mixed) {
    const [, whole = '0', n = '0', d = '1'] = mixed;
    if (Number(d) === 0)
      return { sentence: `${asked} has nothing below the line. Enter a fraction such as 3/4.` };
    const value = Rational.parse(whole).plus(Rational.of(Number(n), Number(d)));
    const exact = value.toString();
    if (stored.safeParse(exact).success) return { amount: exact };
  }
  if (/^[\d.,/ ]+$/.test(plain))
    return { sentence: `${asked} can't be read as one figure. Enter it as 700, 0.75 or 1 1/2.` };
  return {
    sentence: `Enter the quantity in figures, such as 700 or 3/4. You entered ${asked.slice(0, 40)}.`,
  };
};

/** What so many of one size come to ("2 x 400" is 800), as cooks write packs by weight; anything else as `readAmount`. */
export const readTimes = (text: string): ReturnType<typeof readAmount> => {
  const [, many, each] = /^([^x×*]+)[x×*]([^x×*]+)$/i.exec(text) ?? [];
  if (!many || !each) return readAmount(text);
  const [times, size] = [readAmount(many), readAmount(each)];
  if ('sentence' in times) return times;
  if ('sentence' in size) return size;
  const all = Rational.parse(times.amount).times(Rational.parse(size.amount)).toString();
  return stored.safeParse(all).success
    ? { amount: all }
    : { sentence: `${text.trim().slice(0, 40)} comes to more than a quantity holds.` };
};

const kept = new Map<string, Rational>();

/** The exact figure of a stored amount. Kitchens repeat the same few hundred texts, so readings are kept. */
export const exact = (text: string): Rational => {
  let value = kept.get(text);
  if (!value) {
    value = Rational.parse(text);
    if (kept.size < 20_000) kept.set(text, value);
  }
  return value;
};
