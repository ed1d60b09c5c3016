import { noteFrom } from './note-from.js';
import { isAdverb, isNoteWord, isPrepared } from './readied.js';
import { type Segment, segmentsOf } from './segments.js';
import { isSign, isWord, type Line, type Token, wordsOf } from './tokens.js';
import { isFoodWord } from './vocabulary.js';
import { kinds, kindsOfLast, sizes, states, takesState } from './words.js';

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
    const end =
      kind === 'bracket'
        ? start
        : noteFrom(words, start + (asBought ? 0 : readiedFrom(words.slice(start))), asBought);
    food = words.slice(start, end);
    note = words.slice(end);
  }
  let name = wordsOf(line, food);
  const readied = asBought ? 0 : readiedFrom(food);
  if (readied > 0) {
    const own = isWord(food[1], 'squeezed', 'pressed') ? 0 : 1;
    before.push(wordsOf(line, food.slice(own, readied)));
    const rest = food.slice(readied);
    name = [wordsOf(line, food.slice(0, own)), wordsOf(line, rest)].filter(Boolean).join(' ');
    food = [...food.slice(0, own), ...rest];
  }
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

/** "fresh chopped dill": past what is done to it; fresh stays with the name. */
const readiedFrom = (food: readonly Token[]): number => {
  if (!isWord(food[0], 'fresh')) return 0;
  let at = 1;
  while (isPrepared(food[at]) || (food[at]?.kind === 'word' && isAdverb(food[at]!.low))) at++;
  return at > 1 && at < food.length && isPrepared(food[at - 1]) ? at : 0;
};

/** What follows a bracket without a comma and begins with a food's word. */
const goesOn = (segments: readonly Segment[], at: number): Segment | undefined => {
  const [bracket, next] = segments.slice(at, at + 2);
  if (bracket?.kind !== 'bracket' || bracket.apart || next?.kind !== 'text' || next.apart) return undefined;
  const [first] = next.tokens;
  return first?.kind === 'word' && isFoodWord(first.low) && !isNoteWord(first.low) ? next : undefined;
};

const groundAtTable = new Set('pepper nutmeg coffee peppercorns'.split(' '));
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
  if (isWord(token, 'and', 'or', 'but') && at > 0 && next)
    return noteLength(words, at + 1, asBought) > 0 ? 1 : 0;
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
