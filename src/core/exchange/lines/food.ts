import { amountAt } from './bracket.js';
import { type Segment, segmentsOf } from './segments.js';
import { isSign, isWord, type Line, type Token, wordsOf } from './tokens.js';
import { isFoodName, isFoodWord } from './vocabulary.js';
import {
  adverbs,
  kinds,
  kindsOfLast,
  noteBegins,
  parts,
  prepared,
  purposes,
  sizes,
  states,
  takesState,
} from './words.js';

/** What the words after the amount name, and what they say about it, in the order of the line. */
export type Food = {
  food: Token[];
  /** The food's words; brackets in its middle are left out. */
  name: string;
  before: string[];
  after: string[];
  /** What a note without a comma before it says. */
  note: Token[];
  /** The segments after the food, for what is in doubt there. */
  tail: Segment[];
  open: boolean;
};

/** Splits food and note; `asBought` keeps words of preparation in the name, as on a tin. */
export const foodOf = (line: Line, tokens: readonly Token[], asBought: boolean): Food => {
  const { segments, open } = segmentsOf(tokens);
  const before: string[] = [];
  let food: Token[] = [];
  let note: Token[] = [];
  let at = 0;
  for (; at < segments.length && food.length === 0; at++) {
    const { kind, tokens: words } = segments[at]!;
    const start = kind === 'bracket' ? words.length : namedFrom(words, asBought, at < segments.length - 1);
    if (start > 0) before.push(...asNotes(line, words.slice(0, start)));
    const end = kind === 'bracket' ? start : noteFrom(words, start, asBought);
    food = words.slice(start, end);
    note = words.slice(end);
  }
  let name = wordsOf(line, food);
  const after = note.length > 0 ? [wordsOf(line, note)] : [];
  const joined = note.length === 0 ? goesOn(segments, at) : undefined;
  if (joined) {
    // "2 red (bell) peppers": the name goes on behind the bracket.
    after.push(wordsOf(line, segments[at]!.tokens));
    const end = noteFrom(joined.tokens, 0, asBought);
    food = [...food, ...joined.tokens.slice(0, end)];
    name = `${name} ${wordsOf(line, joined.tokens.slice(0, end))}`;
    if (end < joined.tokens.length) after.push(wordsOf(line, joined.tokens.slice(end)));
    at += 2;
  }
  const tail = segments.slice(at);
  after.push(...tail.map((one) => wordsOf(line, one.tokens)));
  return { food, name, before, after, note, tail, open };
};

/** What follows a bracket without a comma and begins with a food's word. */
const goesOn = (segments: readonly Segment[], at: number): Segment | undefined => {
  const [bracket, next] = segments.slice(at, at + 2);
  if (bracket?.kind !== 'bracket' || bracket.apart || next?.kind !== 'text' || next.apart) return undefined;
  const [first] = next.tokens;
  return first?.kind === 'word' && isFoodWord(first.low) && !isNoteWord(first.low) ? next : undefined;
};

const groundAtTable = new Set('pepper nutmeg coffee peppercorns'.split(' '));
/** "stuffed with cheese", "coated in flour": said of the food, where no shop sells it so. */
const filled = new Set(
  'stuffed filled coated marinated flavoured flavored wrapped topped seasoned infused covered thinned diluted'.split(
    ' ',
  ),
);
const madeWith = new Set('with into to from up'.split(' '));

const isNoteWord = (low: string): boolean => prepared.has(low) || isAdverb(low) || noteBegins.has(low);

/** "stiffly" as well as the listed ones; "curly" and "jelly" are foods' words. */
const isAdverb = (low: string): boolean => adverbs.has(low) || (/.{3}ly$/.test(low) && !isFoodWord(low));

export const isPrepared = (token: Token | undefined): boolean =>
  token?.kind === 'word' && prepared.has(bare(token.low));

/** "finely-chopped" and "pre-cooked" are words of preparation too. */
const bare = (low: string): string => {
  if (prepared.has(low)) return low;
  const last = low.slice(low.lastIndexOf('-') + 1);
  return low.includes('-') && prepared.has(last) && /^(?:\p{L}+ly|well|pre)-/u.test(low) ? last : low;
};

/** Where the name begins: behind sizes, states and words of preparation. */
const namedFrom = (words: readonly Token[], asBought: boolean, more: boolean): number => {
  let at = 0;
  while (at < words.length) {
    const step = noteLength(words, at, asBought);
    if (step === 0) break;
    if (at + step >= words.length && !more) return at;
    at += step;
  }
  return at;
};

/** How many tokens from here are a note before the name; none when the name begins. */
const noteLength = (words: readonly Token[], at: number, asBought: boolean): number => {
  const token = words[at];
  if (!token) return 0;
  if (token.kind !== 'word')
    return at > 0 && isSign(token, '&', '/') && noteLength(words, at + 1, asBought) > 0 ? 1 : 0;
  const next = words[at + 1];
  if (isWord(token, 'and', 'or') && at > 0 && next) return noteLength(words, at + 1, asBought) > 0 ? 1 : 0;
  if (isWord(token, 'freshly', 'coarsely', 'finely') && isWord(next, 'ground')) return 2;
  if (isWord(token, 'fresh', 'coarse') && isWord(next, 'ground') && groundAtTable.has(words.at(-1)!.low))
    return 2;
  if (isAdverb(token.low)) {
    const rest = next && !asBought ? noteLength(words, at + 1, asBought) : 0;
    return rest > 0 ? 1 + rest : 0;
  }
  if (isWord(token, 'free', 'good') && isWord(next, 'range', 'quality', 'sized', 'size')) return 2;
  if (next && kinds[token.low]?.has(next.low)) return 0;
  if (kindsOfLast[token.low]?.has(words.at(-1)!.low)) return 0;
  if (sizes.has(token.low) && isWord(next, 'sized', 'size')) return 2;
  if (/-sized?$/.test(token.low)) return 1;
  if (sizes.has(token.low)) return asBought && token.low === 'whole' ? 0 : isSign(next, '.') ? 2 : 1;
  if (isWord(token, 'extra') && next && sizes.has(next.low)) return isWord(next, 'firm') ? 0 : 2;
  if (states.has(token.low) && !next) return 1;
  if (states.has(token.low)) return takesState.has(words.at(-1)!.low) || isWord(next, 'water') ? 1 : 0;
  return !asBought && isPrepared(token) ? 1 : 0;
};

const asNotes = (line: Line, words: readonly Token[]): string[] => [wordsOf(line, words)];

/** Where a note begins that no comma announces: "onions finely chopped", "oil for frying". */
const noteFrom = (words: readonly Token[], start: number, asBought: boolean): number => {
  for (let at = Math.max(start, 1); at < words.length; at++) {
    const token = words[at]!;
    if (at === start || token.kind === 'glyph') continue;
    if (token.kind === 'figure' && endsInSize(words, at)) return at;
    if (isSign(token, '+')) return at;
    const next = words[at + 1];
    if ((isSign(token, '&') || isWord(token, 'and')) && (next?.kind === 'figure' || next?.kind === 'glyph'))
      return at;
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
