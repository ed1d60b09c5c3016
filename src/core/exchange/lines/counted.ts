import { Rational } from '../../quantity/rational.js';
import { type Amount, amountAt, bracketAt, packOf, sizeIn } from './bracket.js';
import { figureAt } from './figures.js';
import type { Head } from './head.js';
import {
  countAt,
  isContainer,
  isPlural,
  isShopPack,
  isSpooned,
  lengthAt,
  measureAt,
  type UnitRead,
} from './measures.js';
import { table } from './table.js';
import { isDash, isSign, isWord, type Line, type Token, wordsOf } from './tokens.js';
import { afterAmount, afterSize } from './twice.js';
import { extents } from './words.js';

/** Reads what is counted into a head whose figure is read: dozens, the size of each, tins, cloves, pieces. */
export const withCount = (line: Line, head: Head, behind: boolean): void => {
  const { tokens } = line;
  const dozen = countAt(tokens, head.end);
  if (dozen?.unit === 'dozen') {
    const twelve = Rational.of(12);
    head.quantity = head.quantity!.times(twelve);
    head.to = head.to?.times(twelve) ?? null;
    head.end = dozen.end + (isWord(tokens[dozen.end], 'of') ? 1 : 0);
  }
  const crossed = isWord(tokens[head.end], 'x') || isSign(tokens[head.end], '×', '*');
  if (crossed) head.end += 1;
  numbered(line, head);
  const ofLength = sizeBefore(line, head, crossed);
  const extent = extentsEnd(tokens, head.end);
  const measure = crossed || extent > head.end ? measureAt(tokens, extent) : undefined;
  const count = measure ?? countUnit(tokens, extent, head.quantity!, behind);
  head.unit = count?.unit ?? 'each';
  if (!count && ofLength) head.because.push('The figure is a length, and how many are meant is not said.');
  if (count) {
    if (extent > head.end) head.notes.push(wordsOf(line, tokens.slice(head.end, extent)));
    head.end = count.end;
    if (count.doubt) head.because.push(count.doubt);
    if (count.unit === 'percent') head.because.push('Per cent of what, the line does not say.');
    if (measure) afterAmount(line, head);
    else sizeAfter(line, head);
  }
};

/** "2 no. eggs" says how many once more; "1 No. 2 tin" which tin. */
const numbered = (line: Line, head: Head): void => {
  const { tokens } = line;
  if (!isWord(tokens[head.end], 'no', 'nos') || !isSign(tokens[head.end + 1], '.')) return;
  const which = tokens[head.end + 2]?.kind === 'figure' && countAt(tokens, head.end + 3) ? 3 : 2;
  if (which === 3) head.notes.push(wordsOf(line, tokens.slice(head.end, head.end + 3)));
  head.end += which;
};

/** The size that stands between figure and unit: "x 400 g", "(14 oz)", "14-oz", "5 cm". True when the figure was it. */
const sizeBefore = (line: Line, head: Head, crossed: boolean): boolean => {
  const { tokens } = line;
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
const sizeAfter = (line: Line, head: Head): void => {
  const { tokens } = line;
  if (head.pack || !isContainer(head.unit)) return;
  const bracket = bracketAt(tokens, head.end);
  const size = bracket?.closed ? sizeIn(bracket.inner) : undefined;
  if (bracket && size && isSizeOf(head, size)) {
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

const isExtent = ({ low }: Token): boolean => extents.has(low) || /-sized?$/.test(low);

export const extentsEnd = (tokens: readonly Token[], start: number): number => {
  let at = start;
  for (;;) {
    if (tokens[at]?.kind === 'word' && isWord(tokens[at + 1], 'sized', 'size')) at += 2;
    else if (tokens[at] && isExtent(tokens[at]!)) at += isSign(tokens[at + 1], '.') ? 2 : 1;
    else break;
  }
  return at;
};

/** Words that are a unit only in the plural after more than one: "2 rib eye steaks" counts steaks. */
const namesInSingular = [
  'rib',
  'strip',
  'side',
  'square',
  'leaf',
  'blade',
  'stem',
  'bar',
  'ball',
  'pot',
  'log',
  'roll',
];
const namedTogether = table<string[]>({
  rib: ['eye', 'roast', 'steak', 'steaks'],
  pot: ['roast'],
  strip: ['steak', 'steaks', 'loin'],
  square: ['sausage'],
  stock: ['cube', 'cubes'],
  roll: ['mop', 'mops'],
});

/** Words of other things too: a unit only before "of". */
const onlyWithOf = new Set(['nut', 'walnut', 'hazelnut', 'lump', 'curl']);

/** A count unit, unless the word is part of the food's name or there is no food after it. */
export const countUnit = (
  tokens: readonly Token[],
  at: number,
  quantity: Rational,
  behind = false,
): UnitRead | undefined => {
  const count = countAt(tokens, at);
  if (!count || behind) return count;
  const next = tokens[count.end];
  if (!next || (next.kind === 'sign' && !isSign(next, '('))) return undefined;
  const token = tokens[at]!;
  if (onlyWithOf.has(count.unit))
    return isWord(next, 'of')
      ? { ...count, doubt: `How much a ${count.unit} is, the line does not say.` }
      : undefined;
  const several = quantity.compare(Rational.one) > 0;
  if (namedTogether[token.low]?.includes(next.low)) return undefined;
  if (several && !isPlural(token) && namesInSingular.includes(token.low) && !isWord(next, 'of'))
    return undefined;
  return count;
};
