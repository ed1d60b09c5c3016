import { isSign, isWord, type Line, type Token, wordsOf } from './tokens.js';
import { isFoodName } from './vocabulary.js';

/** The first food of "butter or margarine", with the other as a note. */
export type Alternative = { food: Token[]; name: string; note: string };

const shared = new Set(
  'stock broth oil vinegar flour sugar milk cream cheese wine rice pasta beans lentils mince pepper peppers onion onions noodles juice zest seeds mustard lettuce potatoes chillies leaves stock-cube cube cubes bread olives grapes apples cabbage'.split(
    ' ',
  ),
);
/** Words that a stock or a juice is made of are foods by themselves; before these they only say of what. */
const madeOf = new Set('stock broth juice vinegar mince leaves oil seeds zest cube cubes'.split(' '));
const colours = new Set('white red green brown black yellow pink golden'.split(' '));
const fats = new Set('butter lard ghee margarine dripping shortening fat'.split(' '));

/** Splits a food at its "or" or slash; undefined when there is none. */
export const alternativeIn = (line: Line, food: readonly Token[]): Alternative | undefined => {
  const at = food.findIndex((token, place) => place > 0 && (isWord(token, 'or') || isSign(token, '/')));
  if (at < 0 || at === food.length - 1) return undefined;
  const first = trimmedEnd(food.slice(0, at));
  if (first.length === 0) return undefined;
  const other = food.slice(at + 1);
  const start = isWord(other[0], 'or') ? 1 : 0;
  const note = `or ${wordsOf(line, other.slice(start))}`;
  const head = other.at(-1)!;
  const name = wordsOf(line, first);
  if (other.length - start < 2 || !leansOn(first.at(-1)!, head)) return { food: first, name, note };
  const whole =
    first.length === 1 && other.length - start > 2 && other[start]!.kind === 'word'
      ? other.slice(start + 1)
      : [head];
  return { food: [...first, ...whole], name: `${name} ${wordsOf(line, whole)}`, note };
};

const trimmedEnd = (tokens: readonly Token[]): Token[] =>
  isWord(tokens.at(-1), 'and') ? tokens.slice(0, -1) : [...tokens];

/** True when the first word cannot stand without the last of the other: "red or white wine". */
const leansOn = (first: Token, head: Token): boolean => {
  if (fats.has(first.low) || !isFoodName(head.low)) return false;
  return !isFoodName(first.low) || colours.has(first.low) || (madeOf.has(head.low) && !shared.has(first.low));
};
