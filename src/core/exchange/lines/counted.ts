import { Rational } from '../../quantity/rational.js';
import { countUnit, extentsEnd } from './count-unit.js';
import type { Head } from './head.js';
import { countAt, measureAt } from './measures.js';
import { sizeAfter, sizeBefore } from './pack-size.js';
import { isSign, isWord, type Line, type Token, wordsOf } from './tokens.js';
import { afterAmount, anotherAmount } from './twice.js';
import { adverbs, prepared } from './words.js';

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
  head.crossed = crossed;
  numbered(line, head);
  const ofLength = sizeBefore(line, head, crossed);
  const extent = readiedEnd(tokens, extentsEnd(tokens, head.end));
  const measure = crossed || extent > head.end ? measureAt(tokens, extent) : undefined;
  const count = measure ?? countUnit(tokens, extent, head.quantity!, behind);
  head.unit = count?.unit ?? 'each';
  if (!count && ofLength) head.because.push('The figure is a length, and how many are meant is not said.');
  if (count) {
    if (extent > head.end) head.notes.push(wordsOf(line, tokens.slice(head.end, extent)));
    head.end = count.end;
    ofSpoonSize(head);
    if (count.doubt) head.because.push(count.doubt);
    if (count.unit === 'percent') head.because.push('Per cent of what, the line does not say.');
    if (measure) afterAmount(line, head);
    else {
      sizeAfter(line, head);
      anotherAmount(line, head);
    }
  }
};

/** "2 x 15ml spoons": the size says which spoon. */
const ofSpoonSize = (head: Head): void => {
  const { pack, unit } = head;
  if (pack?.unit !== 'ml' || !unit || !['spoon', 'tsp', 'dessertspoon', 'tbsp'].includes(unit)) return;
  head.unit = { '5': 'tsp', '10': 'dessertspoon', '15': 'tbsp', '20': 'tbsp' }[pack.amount] ?? unit;
  head.notes.push(`${pack.amount}${pack.unit}`);
  head.pack = null;
};

/** "2 crushed cloves of garlic", "a chopped handful of": what is done stands before what is counted. */
const readiedEnd = (tokens: readonly Token[], start: number): number => {
  let at = start;
  while (tokens[at]?.kind === 'word' && (prepared.has(tokens[at]!.low) || adverbs.has(tokens[at]!.low))) at++;
  const count = at > start ? countAt(tokens, at) : undefined;
  return count && isWord(tokens[count.end], 'of', 'garlic') ? at : start;
};

/** "2 no. eggs" says how many once more; "1 No. 2 tin" which tin. */
const numbered = (line: Line, head: Head): void => {
  const { tokens } = line;
  if (!isWord(tokens[head.end], 'no', 'nos') || !isSign(tokens[head.end + 1], '.')) return;
  const which = tokens[head.end + 2]?.kind === 'figure' && countAt(tokens, head.end + 3) ? 3 : 2;
  if (which === 3) head.notes.push(wordsOf(line, tokens.slice(head.end, head.end + 3)));
  head.end += which;
};
