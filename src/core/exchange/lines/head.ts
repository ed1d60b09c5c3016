import type { Measure } from '../../facts/common.js';
import { Rational } from '../../quantity/rational.js';
import { joinedMeasureAt } from './bracket.js';
import { countUnit } from './count-unit.js';
import { withCount } from './counted.js';
import { figureAt, fits } from './figures.js';
import { orOthers, orSo, orTwo } from './loosely.js';
import { isContainer, isPlural, type UnitRead } from './measures.js';
import { isSign, isWord, type Line, type Token, wordsOf } from './tokens.js';
import { afterAmount } from './twice.js';
import { whoseMeasure } from './whose-measure.js';
import { approximations } from './words.js';

/** The amount a line begins with, and where what it is of begins. */
export type Head = {
  quantity: Rational | null;
  to: Rational | null;
  unit: string | null;
  pack: Measure | null;
  notes: string[];
  because: string[];
  end: number;
  /** True when an x stands between figure and size. */
  crossed?: boolean;
};

/** No amount at all. */
export const noHead: Head = {
  quantity: null,
  to: null,
  unit: null,
  pack: null,
  notes: [],
  because: [],
  end: 0,
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
  orSo(line, head);
  const whose = whoseMeasure(tokens, head.end);
  if (whose) {
    head.notes.push(whose);
    head.because.push('The line says whose measure it is: see which cups and spoons the recipe means.');
    head.end += 1;
  }
  const measure = joinedMeasureAt(tokens, head.end);
  if (measure && !isNamedByMeasure(tokens, measure)) withMeasure(line, head, measure, behind);
  else withCount(line, head, behind);
  orSo(line, head);
  orTwo(tokens, head);
  orOthers(line, head);
  if (!fits(head.quantity!) || (head.to && !fits(head.to))) return undefined;
  if (['spoon', 'saltspoon', 'breakfastcup'].includes(head.unit ?? ''))
    head.because.push('Which spoon or cup is meant is not said.');
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
    else if (isWord(token, 'less', 'more') && isWord(tokens[at + 1], 'than')) at += 2;
    else if (isWord(token, 'up') && isWord(tokens[at + 1], 'to')) at += 2;
    else if (token?.kind === 'word' && approximations.has(token.low)) at += 1;
    else if (isSign(token, '~', '≈', '.') && (at > start || token?.text !== '.')) at += 1;
    else return figureAt(tokens, at) ? at : start;
  }
};

/** "1 pound cake", "12 cup mushrooms": the measure belongs to the name, or may. */
const isNamedByMeasure = (tokens: readonly Token[], { unit, end }: UnitRead): boolean =>
  unit === 'cup' &&
  isWord(tokens[end], 'mushrooms', 'mushroom', 'cakes') &&
  tokens[end - 1]?.low === 'cup' &&
  !isFigureOne(tokens[end - 2]);

const isFigureOne = (token: Token | undefined): boolean => isWord(token, 'a', 'one') || token?.text === '1';

const holdsIt = ['g', 'kg', 'oz', 'lb', 'ml', 'cl', 'dl', 'l', 'fl-oz', 'pint', 'quart', 'gallon'];

const withMeasure = (line: Line, head: Head, measure: UnitRead, behind: boolean): void => {
  const { tokens } = line;
  head.unit = measure.unit;
  head.end = measure.end;
  if (measure.doubt) head.because.push(measure.doubt);
  if (measure.unit === 'cl' && isWord(tokens[measure.end], 'garlic')) {
    head.unit = 'clove';
    head.because.push('cl is read as cloves.');
    return;
  }
  if (
    measure.unit === 'cup' &&
    isWord(tokens[measure.end], 'mushrooms', 'cakes') &&
    !isPlural(tokens[measure.end - 1])
  )
    head.because.push('Cup mushrooms are a kind too.');
  if (measure.unit === 'lb' && isWord(tokens[measure.end], 'cake'))
    head.because.push('A pound cake is a kind of cake too.');
  if (asContainer(line, head, behind)) return;
  afterAmount(line, head);
  asContainer(line, head, behind);
};

/** "400 g tins x 2": how many stands behind. */
const timesSo = (tokens: readonly Token[], head: Head): void => {
  const times = isWord(tokens[head.end], 'x') || isSign(tokens[head.end], '×');
  const many = times ? figureAt(tokens, head.end + 1) : undefined;
  if (!many) return;
  head.quantity = many.value;
  head.to = many.to;
  head.end = many.end;
  head.because = head.because.filter((why) => why !== howMany);
};

const howMany = 'How many of them is not stated.';

/** "400 g tin", "400g/14oz tin": the amount was the size of one. True when it was. */
const asContainer = ({ tokens }: Line, head: Head, behind: boolean): boolean => {
  const { quantity, unit } = head;
  const container = countUnit(tokens, head.end, Rational.one, behind);
  if (!container || !isContainer(container.unit) || !quantity || !unit || !holdsIt.includes(unit))
    return false;
  // "1-14 oz can": one of 14 oz, or a can of one to fourteen.
  if (head.to) head.because.push('The two figures may be a range, or how many and the size of each.');
  head.pack = { amount: (head.to ?? quantity).toString(), unit };
  head.quantity = head.to ? quantity : Rational.one;
  head.unit = container.unit;
  if (isPlural(tokens[head.end]) && !head.to) head.because.push(howMany);
  head.to = null;
  head.end = container.end;
  timesSo(tokens, head);
  return true;
};
