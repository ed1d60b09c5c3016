import { Rational } from '../../quantity/rational.js';
import { type Amount, amountAt, bracketAt, packOf, sizeIn } from './bracket.js';
import { extentsEnd } from './count-unit.js';
import { figureAt } from './figures.js';
import type { Head } from './head.js';
import { countAt, isContainer, isShopPack, isSpooned, lengthAt } from './measures.js';
import { isDash, isSign, isWord, type Line, type Token, wordsOf } from './tokens.js';
import { afterSize } from './twice.js';

/** The size that stands between figure and unit: "x 400 g", "(14 oz)", "14-oz", "5 cm". True when the figure was it. */
export const sizeBefore = (line: Line, head: Head, crossed: boolean): boolean => {
  const { tokens } = line;
  sizedThen(line, head);
  const bracket = bracketAt(tokens, head.end);
  if (bracket?.closed) {
    const size = sizeIn(bracket.inner);
    head.pack = size?.pack ?? null;
    if (
      !size &&
      bracket.inner.some(({ kind }) => kind === 'figure') &&
      !bracket.inner.some((_, at) => amountAt(bracket.inner, at) ?? lengthAt(bracket.inner, at))
    )
      head.because.push(`What "${wordsOf(line, bracket.inner)}" measures is not known.`);
    if (amountAt(bracket.inner, 0)?.to) head.because.push('The size of each is stated as a range.');
    if (!size || size.again.length > 0) head.notes.push(wordsOf(line, size ? size.again : bracket.inner));
    head.end = bracket.end;
    return false;
  }
  const direct = lengthAt(tokens, head.end);
  if (direct !== undefined && !crossed) {
    const own = figureStart(tokens, head.end);
    if (head.end - own > 1 && !head.to) head.because.push('The figure may be how many, and a length.');
    head.end = otherLength(tokens, direct);
    head.notes.push(wordsOf(line, tokens.slice(own, head.end)));
    head.quantity = Rational.one;
    head.to = null;
    return true;
  }
  const second = figureAt(tokens, head.end + (isDash(tokens[head.end]) ? 1 : 0));
  const length = second && lengthAt(tokens, second.end);
  if (length === undefined) sizeOfEach(line, head, amountAt(tokens, head.end), crossed);
  else {
    const end = otherLength(tokens, length);
    head.notes.push(wordsOf(line, tokens.slice(head.end, end)));
    head.end = end;
  }
  return false;
};

/** "1 large (28-oz.) can": past the word before the size. */
const sizedThen = (line: Line, head: Head): void => {
  const end = extentsEnd(line.tokens, head.end);
  const bracket = end > head.end ? bracketAt(line.tokens, end) : undefined;
  if (!bracket?.closed || !sizeIn(bracket.inner) || !countAt(line.tokens, bracket.end)) return;
  head.notes.push(wordsOf(line, line.tokens.slice(head.end, end)));
  head.end = end;
};

/** "2.5cm/1in": past the same length told again. */
const otherLength = (tokens: readonly Token[], at: number): number => {
  const bracket = bracketAt(tokens, at);
  const inside = bracket && figureAt(bracket.inner, 0);
  if (bracket && inside && lengthAt(bracket.inner, inside.end) === bracket.inner.length) return bracket.end;
  const figure = isSign(tokens[at], '/') ? figureAt(tokens, at + 1) : undefined;
  return (figure && lengthAt(tokens, figure.end)) ?? at;
};

/** The figure itself, one token or more, that ends before a token. */
const figureStart = (tokens: readonly Token[], end: number): number => {
  let at = end;
  while (
    at > 0 &&
    (['figure', 'glyph'].includes(tokens[at - 1]!.kind) ||
      isSign(tokens[at - 1], '/') ||
      isDash(tokens[at - 1]))
  )
    at--;
  return at;
};

const sizeOfEach = (line: Line, head: Head, amount: Amount, crossed: boolean): void => {
  if (!amount) return;
  const pack = packOf(amount);
  if (!crossed && !countAt(line.tokens, amount.end))
    head.because.push('Two figures stand side by side: how many, and the size of each.');
  if (!line.tokens[amount.end]) head.because.push('What is counted is not said.');
  if (pack) head.pack = pack;
  else head.notes.push(wordsOf(line, line.tokens.slice(head.end, amount.end)));
  head.end = amount.end;
  afterSize(line, head);
};

/** "1 can (14 oz) tomatoes", "1 pack of 6 rolls". */
export const sizeAfter = (line: Line, head: Head): void => {
  const { tokens } = line;
  if (head.pack || !isContainer(head.unit)) return;
  const bracket = bracketAt(tokens, head.end);
  const size = bracket?.closed ? sizeIn(bracket.inner) : undefined;
  const direct = amountAt(tokens, head.end);
  const pack = direct && packOf(direct);
  if (pack && tokens[direct.end]?.kind === 'word') {
    head.pack = pack;
    head.end = direct.end;
    head.because.push('Whether the size is that of each is not said.');
  } else if (bracket?.closed && !size && bracket.inner.some((_, at) => amountAt(bracket.inner, at)))
    head.because.push(`"${wordsOf(line, bracket.inner)}" is not read as a size.`);
  else if (bracket && size && isSizeOf(head, size)) {
    if (!size.each && !head.quantity!.equals(Rational.one))
      head.because.push('Whether the size is that of each is not said.');
    head.pack = size.pack;
    if (size.again.length > 0) head.notes.push(wordsOf(line, size.again));
    head.end = bracket.end;
  } else if (isWord(tokens[head.end], 'of')) sizeInPieces(tokens, head);
};

/** "2 sticks (8 oz) butter" states the whole; "2 cans (8 oz)" and "1 bunch (200 g)" what one holds. */
const isSizeOf = (
  { unit, quantity }: Head,
  { pack, each }: NonNullable<ReturnType<typeof sizeIn>>,
): boolean => !isSpooned(pack.unit) && (each || isShopPack(unit) || quantity!.compare(Rational.one) === 0);

const sizeInPieces = (tokens: readonly Token[], head: Head): void => {
  const amount = amountAt(tokens, head.end + 1);
  const figure = figureAt(tokens, head.end + 1);
  if (amount || !figure || figure.to || tokens[head.end + 1]?.kind !== 'figure') return;
  head.pack = { amount: figure.value.toString(), unit: 'each' };
  head.end = figure.end;
};
