import { amountAt, joinedMeasureAt } from './bracket.js';
import { figureAt } from './figures.js';
import type { Food } from './food.js';
import { countAt, isWeight } from './measures.js';
import { isSome } from './note-from.js';
import { isPrepared } from './readied.js';
import type { Segment } from './segments.js';
import { isSign, isWord, type Line, type Token, wordsOf } from './tokens.js';
import { isFoodName, isFoodWord } from './vocabulary.js';
import {
  eitherKind,
  joinedNames,
  kinds,
  kindsOfLast,
  mayBeKinds,
  noteBegins,
  parts,
  prepared,
  sizes,
} from './words.js';

/** Why what was read as the food may not be all of it, or too much. */
export const doubtsOfFood = (
  food: readonly Token[],
  name: string,
  asBought: boolean,
  before: readonly string[],
): string[] => {
  if (food.length === 0) return ['No food was found in the line.'];
  const because: string[] = [];
  const low = name.toLowerCase();
  const joined = joinedNames.some((one) => low.includes(one));
  if (!joined && food.some((token) => isWord(token, 'and') || isSign(token, '&', '+')))
    because.push('The line may name more than one food.');
  if (food.length > 8) because.push('The name is long: some of it may be a note.');
  if (!joined && !food.some((token) => isFoodName(token.low)))
    because.push(`Which food "${name}" means is not known.`);
  if (/^(?:the )?(?:juice|zest|rind|peel)$/.test(low)) because.push(`Of what the ${low} is, is not said.`);
  if (/^(?:good|best|nice|decent|basic)$/.test(food[0]!.low))
    because.push(`"${food[0]!.text}" may say what it is to be like.`);
  if (/^cloves?$/.test(low) && !before.includes('whole'))
    because.push('Cloves may be the spice, or of garlic.');
  for (const word of before
    .join(' ')
    .toLowerCase()
    .split(/[\s,]+/))
    if (kinds[word]?.has(food[0]!.low) || mayBeKinds[word]?.has(food[0]!.low))
      because.push(`"${word}" may be part of the name.`);
  food.forEach((token, at) => {
    const why = doubtOfWord(food, at, token, asBought);
    if (why) because.push(why);
  });
  return because;
};

const softOrHard = new Set('thin thick soft hard crisp cracked'.split(' '));
const inNames = new Set('and of in on the la al de en'.split(' '));

const doubtOfWord = (
  food: readonly Token[],
  at: number,
  token: Token,
  asBought: boolean,
): string | undefined => {
  if (token.kind === 'figure' || token.kind === 'glyph') return doubtOfFigure(food, at, token);
  if (token.kind === 'sign')
    return isSign(token, '%', '&', '+', "'", '"', '“', '”', '‘', '’')
      ? undefined
      : `"${token.text}" stands in the name.`;
  if (inNames.has(token.low)) return undefined;
  if (token.low.endsWith("'s") && isWord(food[at + 1], 'juice', 'zest', 'rind', 'worth', 'peel'))
    return 'How much of it is meant is not known.';
  if (
    at > 0 &&
    sizes.has(token.low) &&
    token.low !== 'fat' &&
    !kinds[token.low]?.has(food[at + 1]?.low ?? '') &&
    !kindsOfLast[token.low]?.has(food.at(-1)!.low)
  )
    return `"${token.text}" stands in the middle of the name.`;
  if (countAt(food, at) && isWord(food[at + 1], 'of')) return `"${token.text}" may be what is counted.`;
  if (at === 0 && softOrHard.has(token.low) && isFoodName(food.at(-1)!.low) && food.length === 2)
    return `"${token.text}" may say what it is to be like.`;
  if (isPrepared(token)) {
    const named =
      at < food.length - 1 &&
      (asBought || kinds[token.low]?.has(food[at + 1]!.low) || kindsOfLast[token.low]?.has(food.at(-1)!.low));
    if (named && !(eitherKind.has(token.low) && !asBought)) return undefined;
    return `"${token.text}" may be part of the name or what is to be done.`;
  }
  if (asBought && token.low.includes('-') && prepared.has(token.low.slice(token.low.lastIndexOf('-') + 1)))
    return undefined;
  return isFoodWord(token.low) ? undefined : `"${token.text}" is a word this reader does not know.`;
};

const doubtOfFigure = (food: readonly Token[], at: number, token: Token): string | undefined =>
  (isSign(food[at + 1], '%') && at + 2 < food.length) || token.text === '00' || token.text === '0'
    ? undefined
    : `"${token.text}" is not read as an amount.`;

/** "five spice powder, 1 tsp": a spoonful behind what is counted says that the count may belong to the name. */
export const doubtsOfCount = (unit: string | null, { food, tail }: Food): string[] => {
  if (unit !== 'each') return [];
  if (food.length > 1 && isWord(food.at(-1), 'juice', 'zest', 'rind', 'peel'))
    return ['Whether the fruit is counted, or what is taken of it, is not said.'];
  const other = tail.some(({ tokens }) => {
    const figure = figureAt(tokens, 0);
    const of = figure && (joinedMeasureAt(tokens, figure.end) ?? countAt(tokens, figure.end));
    return of?.end === tokens.length && !isWeight(of.unit);
  });
  return other ? ['Two amounts are stated.'] : [];
};

/** Why the words behind the food may hold more than a note: another food, another amount. */
export const doubtsOfNotes = (line: Line, { tail, after, note }: Food): string[] => {
  const because: string[] = [];
  const stretches = [...tail.map(({ tokens }) => tokens), ...(note.length > 0 ? [note] : [])];
  if (stretches.some(addsAmount)) because.push('A second amount stands in the note.');
  if (tail.some((one) => isAlternative(one.tokens))) because.push('The line offers one food or another.');
  if (/\b(?:per|each) (?:person|head|serving|guest|portion)\b/i.test(after.join(', ')))
    because.push('The amount is for one person.');
  const other = tail.find(namesFood);
  if (other) because.push(`"${wordsOf(line, other.tokens)}" may be another food.`);
  return after.length > 0 ? because : [];
};

/** "1 red, 1 yellow": how many of each of several kinds. */
const countsKinds = (tokens: readonly Token[]): boolean =>
  tokens.filter((_, at) => {
    const figure = figureAt(tokens, at);
    return figure !== undefined && isFoodWord(tokens[figure.end]?.low ?? '');
  }).length > 1;

const addsAmount = (tokens: readonly Token[]): boolean =>
  countsKinds(tokens) ||
  tokens.some((token, at) => {
    if (parts.has(token.low) && figureAt(tokens, at + 1)) return true;
    const partOfOther = isWord(token, 'of') && parts.has(tokens[at - 1]?.low ?? '');
    if (
      !partOfOther &&
      !isWord(token, 'plus', 'with', 'or', 'and', 'less', 'minus') &&
      !isSign(token, '+', '&')
    )
      return false;
    if (isWord(token, 'and') && isSome(tokens, at + 1)) return true;
    const figure = figureAt(tokens, at + 1);
    if (!figure) return false;
    return (
      !isWord(tokens[at + 1], 'a', 'an') ||
      countAt(tokens, figure.end) !== undefined ||
      amountAt(tokens, at + 1) !== undefined
    );
  });

const isAlternative = (tokens: readonly Token[]): boolean => {
  const between = tokens.findIndex(
    (token, at) => at > 0 && isWord(token, 'or') && isFoodName(tokens[at - 1]!.low),
  );
  if (between > 0 && tokens.slice(between).some(({ low }) => isFoodName(low))) return true;
  if (tokens.some((_, at) => isEitherKind(tokens, at))) return true;
  const at = isWord(tokens[0], 'and') ? 1 : 0;
  if (!isWord(tokens[at], 'or')) return false;
  return !isWord(tokens[at + 1], 'to', 'more', 'as', 'less', 'so');
};

/** "whole or 2%", "red or green": one kind or another. */
const isEitherKind = (tokens: readonly Token[], at: number): boolean => {
  const [before, or, after] = tokens.slice(at, at + 3);
  if (!isWord(or, 'or') || before?.kind !== 'word' || !after) return false;
  const kind = isFoodWord(before.low) || before.low === 'whole';
  return kind && !isPrepared(before) && (isSign(tokens[at + 3], '%') || isFoodWord(after.low));
};

const joins = new Set('for with into from of plus in to at until on if such as or about only'.split(' '));

/** A stretch that names a food and says nothing of it: "salt, freshly ground pepper", "1 carrot, 1 onion". */
const namesFood = ({ kind, tokens }: Segment): boolean => {
  const last = tokens.at(-1)!;
  const name = tokens.some(({ low }) => isFoodName(low) && !parts.has(low) && !noteBegins.has(low));
  const counted = figureAt(tokens, 0) !== undefined;
  return (
    kind === 'text' && name && !tokens.some(({ low }) => joins.has(low)) && (counted || !isPrepared(last))
  );
};
