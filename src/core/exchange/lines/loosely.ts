import { figureAt } from './figures.js';
import type { Head } from './head.js';
import { isSign, isWord, type Line, type Token, wordsOf } from './tokens.js';
import { sizes } from './words.js';

/** "10 or so", "500 g or thereabouts", "4ish", "200 g approx.". */
export const orSo = (line: Line, head: Head): void => {
  const ish = isWord(line.tokens[head.end], 'ish', 'approx', 'approximately') ? 1 : 0;
  const words = line.tokens.slice(head.end, head.end + (ish || 2));
  if (!ish && !(isWord(words[0], 'or') && isWord(words[1], 'so', 'thereabouts'))) return;
  head.notes.push(wordsOf(line, words));
  head.because.push('The amount is only about that.');
  head.end += words.length;
  if (isSign(line.tokens[head.end], '.')) head.end += 1;
};

/** "1 large or 2 small onions": as many of another size, a note. */
export const orOthers = (line: Line, head: Head): void => {
  const { tokens } = line;
  const or = sizesEnd(tokens, head.end);
  const other = or > head.end && isWord(tokens[or], 'or') ? figureAt(tokens, or + 1) : undefined;
  const end = other && sizesEnd(tokens, other.end);
  if (!other || !end || end === other.end) return;
  head.notes.push(wordsOf(line, tokens.slice(head.end, or)), wordsOf(line, tokens.slice(or, end)));
  head.because.push('Two amounts are stated, and only the first is read as the amount.');
  head.end = end;
};

const sizesEnd = (tokens: readonly Token[], start: number): number => {
  let at = start;
  while (tokens[at] && sizes.has(tokens[at]!.low)) at++;
  return at;
};

/** "a clove or two of". */
export const orTwo = (tokens: readonly Token[], head: Head): void => {
  const to = isWord(tokens[head.end], 'or') && !head.to ? figureAt(tokens, head.end + 1) : undefined;
  if (!to || !isWord(tokens[to.end], 'of') || to.value.compare(head.quantity!) <= 0) return;
  head.to = to.value;
  head.end = to.end;
  head.because.push('How many are meant is said loosely.');
};
