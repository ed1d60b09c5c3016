import type { Measure } from '../../facts/common.js';
import { Rational } from '../../quantity/rational.js';
import { type Amount, amountAt, bracketAt, joinedMeasureAt, packOf, sizeIn } from './bracket.js';
import { type Figure, figureAt } from './figures.js';
import { countAt, isContainer, isPlural, lengthAt, measureAt, type UnitRead } from './measures.js';
import { isDash, isSign, isWord, type Line, type Token, wordsOf } from './tokens.js';
import { afterAmount } from './twice.js';
import { approximations, extents } from './words.js';

/** The amount a line begins with, and where what it is of begins. */
export type Head = {
  quantity: Rational | null;
  to: Rational | null;
  unit: string | null;
  pack: Measure | null;
  notes: string[];
  because: string[];
  end: number;
};

/** Reads the amount at the beginning of some tokens; undefined when there is none. `behind` when its food stands before it. */
export const headOf = (line: Line, start = 0, behind = false): Head | undefined => {
  const { tokens } = line;
  const at = afterApproximations(tokens, start);
  const figure = figureAt(tokens, at);
  if (!figure) return undefined;
  const head: Head = {
    quantity: figure.value,
    to: figure.to,
    unit: null,
    pack: null,
    notes: at > start ? [wordsOf(line, tokens.slice(start, at))] : [],
    because: figure.doubt ? [figure.doubt] : [],
    end: figure.end,
  };
  const measure = joinedMeasureAt(tokens, figure.end);
  if (measure && !isNamedByMeasure(tokens, measure)) withMeasure(line, head, figure, measure, behind);
  else withCount(line, head, behind);
  if (isWord(tokens[head.end], 'each') && head.end + 1 < tokens.length) {
    head.notes.push('each');
    head.because.push('The amount is of each of several foods.');
    head.end += 1;
  }
  if (isWord(tokens[head.end], 'of')) head.end += isWord(tokens[head.end + 1], 'the') ? 2 : 1;
  return head;
};

/** "about", "scant", "at least", "up to", "~", "a good": only when a figure follows. */
const afterApproximations = (tokens: readonly Token[], start: number): number => {
  let at = start;
  for (;;) {
    const token = tokens[at];
    if (
      isWord(token, 'a') &&
      isWord(tokens[at + 1], 'generous', 'scant', 'good') &&
      tokens[at + 2]?.kind !== 'word'
    )
      at += 2;
    else if (isWord(token, 'at') && isWord(tokens[at + 1], 'least', 'most')) at += 2;
    else if (isWord(token, 'up') && isWord(tokens[at + 1], 'to')) at += 2;
    else if (token?.kind === 'word' && approximations.has(token.low)) at += 1;
    else if (isSign(token, '~', '≈', '.') && (at > start || token?.text !== '.')) at += 1;
    else return figureAt(tokens, at) ? at : start;
  }
};

/** "1 pound cake", "12 cup mushrooms": the measure belongs to the name, or may. */
const isNamedByMeasure = (tokens: readonly Token[], { unit, end }: UnitRead): boolean =>
  unit === 'cup' && isWord(tokens[end], 'mushrooms', 'mushroom', 'cakes') && tokens[end - 1]?.low === 'cup';

const holdsIt = ['g', 'kg', 'oz', 'lb', 'ml', 'cl', 'dl', 'l', 'fl-oz', 'pint', 'quart', 'gallon'];

const withMeasure = (line: Line, head: Head, figure: Figure, measure: UnitRead, behind: boolean): void => {
  const { tokens } = line;
  head.unit = measure.unit;
  head.end = measure.end;
  if (measure.doubt) head.because.push(measure.doubt);
  if (measure.unit === 'lb' && isWord(tokens[measure.end], 'cake'))
    head.because.push('A pound cake is a kind of cake too.');
  const container = head.to ? undefined : countUnit(tokens, measure.end, Rational.one, behind);
  if (container && isContainer(container.unit) && holdsIt.includes(measure.unit)) {
    head.pack = { amount: figure.value.toString(), unit: measure.unit };
    head.quantity = Rational.one;
    head.unit = container.unit;
    head.end = container.end;
    if (isPlural(tokens[container.end - 1]) && container.unit !== 'each')
      head.because.push('How many of them is not stated.');
    return;
  }
  afterAmount(line, head);
};

const withCount = (line: Line, head: Head, behind: boolean): void => {
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
  sizeBefore(line, head, crossed);
  const extent = extentsEnd(tokens, head.end);
  const measure = extent > head.end ? measureAt(tokens, extent) : undefined;
  const count = measure ?? countUnit(tokens, extent, head.quantity!, behind);
  head.unit = count?.unit ?? 'each';
  if (count) {
    if (extent > head.end) head.notes.push(wordsOf(line, tokens.slice(head.end, extent)));
    head.end = count.end;
    if (count.doubt) head.because.push(count.doubt);
    if (measure) afterAmount(line, head);
    else sizeAfter(tokens, head);
  }
};

/** The size that stands between figure and unit: "x 400 g", "(14 oz)", "14-oz", "5 cm". */
const sizeBefore = (line: Line, head: Head, crossed: boolean): void => {
  const { tokens } = line;
  const bracket = bracketAt(tokens, head.end);
  if (bracket?.closed) {
    const size = sizeIn(bracket.inner);
    head.pack = size?.pack ?? null;
    if (!size) head.notes.push(wordsOf(line, bracket.inner));
    head.end = bracket.end;
    return;
  }
  const hyphen = isDash(tokens[head.end]) ? 1 : 0;
  const direct = lengthAt(tokens, head.end);
  const second = figureAt(tokens, head.end + hyphen);
  const length = second && lengthAt(tokens, second.end);
  if (direct !== undefined && !crossed) {
    // "5 cm piece": the figure itself was the length.
    head.notes.push(wordsOf(line, tokens.slice(figureStart(tokens, head.end), direct)));
    head.quantity = Rational.one;
    head.to = null;
    head.end = direct;
  } else if (length !== undefined) {
    head.notes.push(wordsOf(line, tokens.slice(head.end, length)));
    head.end = length;
  } else sizeOfEach(line, head, amountAt(tokens, head.end), crossed);
};

const figureStart = (tokens: readonly Token[], end: number): number => {
  let at = end;
  while (at > 0 && tokens[at - 1]?.kind !== 'word') at--;
  return at;
};

const sizeOfEach = (line: Line, head: Head, amount: Amount, crossed: boolean): void => {
  if (!amount) return;
  const pack = packOf(amount);
  if (!crossed && !countAt(line.tokens, amount.end))
    head.because.push('Two figures stand side by side: how many, and the size of each.');
  if (pack) head.pack = pack;
  else head.notes.push(wordsOf(line, line.tokens.slice(head.end, amount.end)));
  head.end = amount.end;
};

/** "1 can (14 oz) tomatoes". */
const sizeAfter = (tokens: readonly Token[], head: Head): void => {
  const bracket = bracketAt(tokens, head.end);
  const size = bracket?.closed && isContainer(head.unit) ? sizeIn(bracket.inner) : undefined;
  if (!bracket || !size || head.pack) return;
  head.pack = size.pack;
  head.end = bracket.end;
};

export const extentsEnd = (tokens: readonly Token[], start: number): number => {
  let at = start;
  while (tokens[at]?.kind === 'word' && extents.has(tokens[at]!.low)) at++;
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
const namedTogether: Record<string, string[]> = {
  rib: ['eye', 'roast', 'steak', 'steaks'],
  pot: ['roast'],
  strip: ['steak', 'steaks', 'loin'],
  square: ['sausage'],
  stock: ['cube', 'cubes'],
  roll: ['mop', 'mops'],
};

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
  const several = quantity.compare(Rational.one) > 0;
  if (namedTogether[token.low]?.includes(next.low)) return undefined;
  if (several && !isPlural(token) && namesInSingular.includes(token.low) && !isWord(next, 'of'))
    return undefined;
  return count;
};
