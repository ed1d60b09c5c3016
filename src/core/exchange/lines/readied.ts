import type { Token } from './tokens.js';
import { isFoodWord } from './vocabulary.js';
import { adverbs, noteBegins, prepared } from './words.js';

/** True when a word begins a note or says what is done to a food. */
export const isNoteWord = (low: string): boolean => prepared.has(low) || isAdverb(low) || noteBegins.has(low);

/** "stiffly" as well as the listed ones; "curly" and "jelly" are foods' words. */
export const isAdverb = (low: string): boolean =>
  adverbs.has(low) || (/.{3}ly$/.test(low) && !isFoodWord(low));

/** True when a token says how a food is cut or readied. */
export const isPrepared = (token: Token | undefined): boolean =>
  token?.kind === 'word' && prepared.has(bare(token.low));

/** "finely-chopped" and "pre-cooked" are words of preparation too. */
const bare = (low: string): string => {
  if (prepared.has(low)) return low;
  const last = low.slice(low.lastIndexOf('-') + 1);
  return low.includes('-') && prepared.has(last) && /^(?:\p{L}+ly|well|pre)-/u.test(low) ? last : low;
};
