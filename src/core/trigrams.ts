/** Three letters in a row of a text's words, each word with two blanks before it and one after; in lower case. */
export const trigrams = (text: string): ReadonlySet<string> => {
  const found = new Set<string>();
  for (const word of text.toLowerCase().split(/[^\p{L}\p{N}]+/u)) {
    if (word === '') continue;
    const letters = [...`  ${word} `];
    for (let at = 0; at + 3 <= letters.length; at++) found.add(letters.slice(at, at + 3).join(''));
  }
  return found;
};

/** How alike two sets of trigrams are, from 0 to 1: those they share as a part of all they have. */
export const likeness = (a: ReadonlySet<string>, b: ReadonlySet<string>): number => {
  const [few, many] = a.size < b.size ? [a, b] : [b, a];
  let shared = 0;
  for (const one of few) if (many.has(one)) shared++;
  const all = a.size + b.size - shared;
  return all === 0 ? 0 : shared / all;
};

/** How alike two texts are by their trigrams, from 0 to 1 (PostgreSQL manual, appendix F, pg_trgm: similarity). */
export const similarity = (a: string, b: string): number => likeness(trigrams(a), trigrams(b));
