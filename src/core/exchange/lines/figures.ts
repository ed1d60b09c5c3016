import { Rational } from '../../quantity/rational.js';
import { numberInWordsAt, smallNumberAt } from './number-words.js';
import { glyphs, isDash, isSign, isWord, type Token } from './tokens.js';

/** A figure read at a place of the line: its exact value, the token after it, and what is in doubt about it. */
export type Figure = { value: Rational; to: Rational | null; end: number; doubt?: string };

const r = Rational.of;

const severalAt = (tokens: readonly Token[], at: number): Rational | undefined => {
  const value = smallNumberAt(tokens, at);
  return value === undefined ? undefined : r(value);
};
const partWords: ReadonlyMap<string, Rational> = new Map([
  ['half', r(1, 2)],
  ['quarter', r(1, 4)],
  ['third', r(1, 3)],
  ['eighth', r(1, 8)],
  ['one-half', r(1, 2)],
  ['one-third', r(1, 3)],
  ['one-quarter', r(1, 4)],
  ['one-fourth', r(1, 4)],
  ['two-thirds', r(2, 3)],
  ['three-quarters', r(3, 4)],
  ['three-fourths', r(3, 4)],
]);
const severalParts: ReadonlyMap<string, Rational> = new Map([
  ['quarters', r(1, 4)],
  ['thirds', r(1, 3)],
  ['eighths', r(1, 8)],
  ['halves', r(1, 2)],
]);

type Single = { value: Rational; end: number; doubt?: string };

/** A whole or decimal figure in digits: 700, 0.75, 1,5, 1 000. A mark before three figures may mean thousands. */
const digits = (tokens: readonly Token[], at: number): Single | undefined => {
  const token = tokens[at];
  if (token?.kind !== 'figure' || token.text.length > 13) return undefined;
  const { text } = token;
  if (/^\d+$/.test(text)) {
    let end = at + 1;
    if (/^[1-9]\d{0,2}$/.test(text)) while (tokens[end]?.text === '000' && tokens[end]!.spaced) end++;
    return { value: Rational.parse(text + '000'.repeat(Math.min(end - at - 1, 3))), end };
  }
  if (/^[1-9]\d{0,2}(,\d{3})+$/.test(text)) {
    const once = text.split(',').length === 2;
    const doubt = once ? `${text} can be read as ${text.replace(',', '')} or ${text.replace(',', '.')}.` : '';
    return { value: Rational.parse(text.replaceAll(',', '')), end: at + 1, ...(doubt && { doubt }) };
  }
  if (!/^\d*[.,]\d+$/.test(text)) return undefined;
  const decimal = text.replace(',', '.').replace(/^\./, '0.');
  const doubt = /^[1-9]\d{0,2}\.\d{3}$/.test(text)
    ? `${text} can be read as ${decimal} or ${text.replace('.', '')}.`
    : '';
  return { value: Rational.parse(decimal), end: at + 1, ...(doubt && { doubt }) };
};

/** A fraction: ½, 1/2, 1⁄2. */
const fraction = (tokens: readonly Token[], at: number): Single | undefined => {
  const glyph = glyphs[tokens[at]?.text ?? ''];
  if (glyph) return { value: r(...glyph), end: at + 1 };
  const [above, slash, below] = tokens.slice(at, at + 3);
  if (above?.kind !== 'figure' || below?.kind !== 'figure' || !isSign(slash, '/', '⁄', '∕')) return undefined;
  if (!/^\d{1,9}$/.test(above.text) || !/^\d{1,9}$/.test(below.text) || Number(below.text) === 0)
    return undefined;
  const value = r(Number(above.text), Number(below.text));
  const run = `${above.text}/${below.text}`;
  const doubt =
    value.compare(one) > 0 && above.text.length > 1
      ? `${run} can be read as ${above.text[0]} ${run.slice(1)} too.`
      : '';
  return { value, end: at + 3, ...(doubt && { doubt }) };
};

const one = r(1);
const properFraction = (tokens: readonly Token[], at: number): Single | undefined => {
  const read = fraction(tokens, at);
  return read && read.value.compare(one) < 0 ? read : undefined;
};

/** What may follow a whole figure to make a mixed one: ½, 1/2, -1/2, and 1/2, and a half. */
const mixedWith = (tokens: readonly Token[], at: number): Single | undefined => {
  const next = tokens[at];
  const direct = properFraction(tokens, at);
  if (direct) return direct;
  if (isDash(next) && !next?.spaced && !tokens[at + 1]?.spaced) return properFraction(tokens, at + 1);
  if (!isWord(next, 'and') && !isSign(next, '&', '+')) return undefined;
  const joined = properFraction(tokens, at + 1);
  if (joined) return joined;
  const several = severalAt(tokens, at + 1);
  const part = isWord(tokens[at + 1], 'a') || several ? at + 2 : at + 1;
  const low = tokens[part]?.low ?? '';
  const value = partWords.get(low) ?? (several && severalParts.get(low));
  return value && { value: value.times(several ?? one), end: part + 1 };
};

/** Past "a" or "of a" after a part: "half of a lemon". */
const afterOfA = (tokens: readonly Token[], at: number): number => {
  const of = isWord(tokens[at], 'of') ? at + 1 : at;
  return isWord(tokens[of], 'a', 'an', 'one', 'the') ? of + 1 : at;
};

/** "half", "half a", "a quarter of a", "three quarters of a", "two thirds". */
const partInWords = (tokens: readonly Token[], at: number): Single | undefined => {
  const several = severalAt(tokens, at);
  const piecesOf = several && severalParts.get(tokens[at + 1]?.low ?? '');
  const start = isWord(tokens[at], 'a', 'one') ? at + 1 : at;
  const single = partWords.get(tokens[start]?.low ?? '');
  if (!piecesOf && !single) return undefined;
  const end = afterOfA(tokens, piecesOf ? at + 2 : start + 1);
  const bare = isWord(tokens[end], 'of') ? end + 1 : end;
  return { value: piecesOf ? several.times(piecesOf) : single!, end: bare };
};

/** "five spice", "half fat milk": a figure in words that belongs to a name. */
const namesOf = new Set('spice bean cheese grain seed pepper fruit berry herb nut fat'.split(' '));

/** "5 spice powder", "7-grain bread". */
const isOfName = (tokens: readonly Token[], at: number): boolean => {
  if (!/^\d$/.test(tokens[at]?.text ?? '')) return false;
  const hyphen = isDash(tokens[at + 1]) && !tokens[at + 1]!.spaced && !tokens[at + 2]?.spaced;
  return hyphen ? namesOf.has(tokens[at + 2]?.low ?? '') : isWord(tokens[at + 1], 'spice');
};

const inWords = (tokens: readonly Token[], at: number): Single | undefined => {
  const number = numberInWordsAt(tokens, at);
  if (number) return { value: r(number.value), end: number.end };
  return isWord(tokens[at], 'a', 'an') ? { value: one, end: at + 1 } : undefined;
};

const single = (tokens: readonly Token[], at: number): Single | undefined => {
  if (!tokens[at] || tokens[at].kind === 'sign') return undefined;
  if (
    tokens[at]?.kind === 'word' &&
    namesOf.has(tokens[at + 1]?.low ?? '') &&
    !isWord(tokens[at], 'a', 'an', 'one')
  )
    return undefined;
  if (isOfName(tokens, at)) return undefined;
  const alone = fraction(tokens, at);
  if (alone) return { ...alone, end: afterOfA(tokens, alone.end) };
  const part = partInWords(tokens, at);
  if (part) return part;
  const couple = isWord(tokens[at], 'a') ? at + 1 : at;
  if (isWord(tokens[couple], 'couple'))
    return {
      value: r(2),
      end: isWord(tokens[couple + 1], 'of') ? couple + 2 : couple + 1,
      doubt: 'A couple is read as two.',
    };
  const whole = inWords(tokens, at) ?? digits(tokens, at);
  if (!whole) return undefined;
  const rest = whole.value.isWhole ? mixedWith(tokens, whole.end) : undefined;
  return rest ? { ...whole, value: whole.value.plus(rest.value), end: rest.end } : whole;
};

/** An amount can be kept: at most twelve figures before the point, nine behind it or below the line. */
export const fits = (value: Rational): boolean =>
  /^(?:\d{1,12}(?:\.\d{1,9})?|\d{1,9}\/\d{1,9})$/.test(value.toString());

/** The figure that starts at a token, a range as both its ends; undefined when none does. */
export const figureAt = (tokens: readonly Token[], at: number): Figure | undefined => {
  const from = single(tokens, at);
  if (!from || !fits(from.value) || isSign(tokens[from.end], '%')) return undefined;
  const hangs = isDash(tokens[from.end]) && isWord(tokens[from.end + 1], 'to', 'or');
  const at2 = hangs ? from.end + 1 : from.end;
  const joins = isDash(tokens[at2]) || isWord(tokens[at2], 'to', 'or');
  const to = joins && !isWord(tokens[at2 + 1], 'a', 'an') ? single(tokens, at2 + 1) : undefined;
  if (!to || !fits(to.value)) return { ...from, to: null };
  const doubt = from.doubt ?? to.doubt ?? descending(from.value, to.value);
  return { value: from.value, to: to.value, end: to.end, ...(doubt && { doubt }) };
};

const descending = (from: Rational, to: Rational): string | undefined =>
  from.compare(to) < 0
    ? undefined
    : `The range ends at ${to.toString()}, which is not above ${from.toString()}.`;
