import { amountAt } from './bracket.js';
import { extentsEnd } from './count-unit.js';
import { countAt } from './measures.js';
import { isAdverb, isNoteWord, isPrepared } from './readied.js';
import { isSign, isWord, type Token } from './tokens.js';
import { isFoodName } from './vocabulary.js';
import { kinds, noteBegins, parts, purposes, states, takesState } from './words.js';

/** "stuffed with cheese", "coated in flour": said of the food, where no shop sells it so. */
const filled = new Set(
  'stuffed filled coated marinated flavoured flavored wrapped topped seasoned infused covered thinned diluted'.split(
    ' ',
  ),
);
const madeWith = new Set('with into to from up'.split(' '));

/** Where a note begins that no comma announces: "onions finely chopped", "oil for frying". */
export const noteFrom = (words: readonly Token[], start: number, asBought: boolean): number => {
  for (let at = Math.max(start, 1); at < words.length; at++) {
    const token = words[at]!;
    if (at === start || token.kind === 'glyph') continue;
    if (token.kind === 'figure' && endsInSize(words, at)) return at;
    if (isSign(token, '+')) return at;
    const next = words[at + 1];
    const joint = isSign(token, '&') || isWord(token, 'and');
    if (joint && (next?.kind === 'figure' || next?.kind === 'glyph')) return at;
    if (joint && isSome(words, at + 1)) return at;
    if (joint && isWord(next, 'a', 'an') && countAt(words, extentsEnd(words, at + 2))) return at;
    if (token.kind !== 'word') continue;
    if (isWord(token, 'and') && parts.has(next?.low ?? '') && isWord(words[at + 2], 'of')) return at;
    if (at === words.length - 2 && isWord(words[at + 1], 'on', 'off', 'in', 'intact')) return at;
    if (isWord(token, 'to') && purposes.has(words[at + 1]?.low ?? '')) return at;
    if (noteBegins.has(token.low) && token.low !== 'to' && begins(words, at, asBought)) return at;
    if (isWord(token, 'of') && isWord(words[at + 1], 'your', 'any')) return at;
    if (isWord(token, 'the') && isWord(next, 'size')) return at;
    if (isWord(token, 'room') && isWord(words[at + 1], 'temp', 'temperature')) return at;
    if (isWord(token, 'as') && isWord(words[at + 1], 'needed', 'required', 'desired', 'necessary', 'you'))
      return at;
    if (isWord(token, 'mixed', 'made', 'blended') && madeWith.has(words[at + 1]?.low ?? '')) return at;
    if (!asBought && filled.has(token.low) && isWord(next, 'with', 'in')) return at;
    // "stock hot", "butter soft": as it would be said before them.
    if (!next && states.has(token.low) && takesState.has(words[at - 1]!.low)) return at;
    if (isPrepared(token) && !kinds[token.low]?.has(next?.low ?? '') && endsInNote(words, at)) return at;
    if (isAdverb(token.low) && isPrepared(words[at + 1])) return at;
  }
  return words.length;
};

/** "a few", "a little", "some": more of something, how much is not said. */
export const isSome = (words: readonly Token[], at: number): boolean =>
  isWord(words[at], 'some', 'several', 'few') ||
  (isWord(words[at], 'a') && isWord(words[at + 1], 'few', 'little', 'bit', 'touch'));

/** "chickpeas 400g", "chicken breasts 200g each". */
const endsInSize = (words: readonly Token[], at: number): boolean => {
  const end = amountAt(words, at)?.end;
  return end === words.length || (end === words.length - 1 && isWord(words.at(-1), 'each'));
};

const begins = (words: readonly Token[], at: number, asBought: boolean): boolean => {
  if (isWord(words[at], 'with'))
    return (
      !isWord(words[at + 1], 'added') &&
      !(asBought && isFoodName(words.at(-1)!.low) && !isWord(words.at(-1), 'juice', 'skin'))
    );
  if (isWord(words[at], 'such')) return isWord(words[at + 1], 'as');
  return true;
};

/** A word of preparation behind the food is a note unless a food's name follows it. */
const endsInNote = (words: readonly Token[], at: number): boolean => {
  const last = words.at(-1)!;
  return (
    at === words.length - 1 ||
    isNoteWord(words[at + 1]!.low) ||
    isWord(words[at + 1], 'and', 'into', 'in', 'to', 'small') ||
    !isFoodName(last.low)
  );
};
