import { joinedMeasureAt } from './bracket.js';
import { figureAt } from './figures.js';
import { isSign, isWord, type Token } from './tokens.js';
import { parts, partWords } from './words.js';

const takenFrom = new Set('from of'.split(' '));

/** "juice ½ lemon": a figure and what is counted; "juice 100 ml" is so much juice. */
const countsWhole = (tokens: readonly Token[], at: number): boolean => {
  const figure = tokens[at]!.kind === 'word' ? undefined : figureAt(tokens, at);
  return tokens[figure?.end ?? -1]?.kind === 'word' && !joinedMeasureAt(tokens, figure!.end);
};

/** "finely grated zest of", "juice from": how many tokens lead to what it is taken of; none when it is no such line. */
export const partOf = (tokens: readonly Token[]): number => {
  let named = false;
  for (let at = 0; at < tokens.length && at < 9; at++) {
    const token = tokens[at]!;
    if (isSign(token, '&', '/', ',')) continue;
    if (token.kind === 'sign') return 0;
    if (named && takenFrom.has(token.low)) return at + 1;
    if (named && countsWhole(tokens, at)) return at;
    if (at > 0 && isWord(token, 'of') && isWord(tokens[at - 1], 'strip', 'strips')) continue;
    if (parts.has(token.low)) named = true;
    else if (!partWords.has(token.low)) return 0;
  }
  return 0;
};
