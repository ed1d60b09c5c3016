import { isWord, type Token } from './tokens.js';

const named = (words: string, value: (place: number) => number): [string, number][] =>
  words.split(' ').map((word, place) => [word, value(place)]);

const small: ReadonlyMap<string, number> = new Map(
  named(
    'one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen',
    (place) => place + 1,
  ),
);
const tens: ReadonlyMap<string, number> = new Map(
  named('twenty thirty forty fifty sixty seventy eighty ninety', (place) => 10 * (place + 2)),
);

type InWords = { value: number; end: number };

/** One to nineteen at a token. */
export const smallNumberAt = (tokens: readonly Token[], at: number): number | undefined =>
  small.get(tokens[at]?.low ?? '');

/** A whole number in words below a thousand: "twelve", "twenty-five", "a hundred", "two hundred and fifty". */
export const numberInWordsAt = (tokens: readonly Token[], at: number): InWords | undefined => {
  const article = isWord(tokens[at], 'a') && isWord(tokens[at + 1], 'hundred');
  const first = article ? { value: 1, end: at + 1 } : belowHundred(tokens, at);
  if (!first || !isWord(tokens[first.end], 'hundred')) return first;
  const hundreds = { value: first.value * 100, end: first.end + 1 };
  const rest = isWord(tokens[hundreds.end], 'and') ? belowHundred(tokens, hundreds.end + 1) : undefined;
  return rest ? { value: hundreds.value + rest.value, end: rest.end } : hundreds;
};

const belowHundred = (tokens: readonly Token[], at: number): InWords | undefined => {
  const alone = smallNumberAt(tokens, at);
  if (alone) return { value: alone, end: at + 1 };
  const low = tokens[at]?.low ?? '';
  const dash = low.indexOf('-');
  const value = tens.get(dash < 0 ? low : low.slice(0, dash));
  if (!value) return undefined;
  if (dash >= 0) {
    const unit = small.get(low.slice(dash + 1));
    return unit ? { value: value + unit, end: at + 1 } : undefined;
  }
  const next = smallNumberAt(tokens, at + 1) ?? 0;
  return next > 0 && next < 10 ? { value: value + next, end: at + 2 } : { value, end: at + 1 };
};
