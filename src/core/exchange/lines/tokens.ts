import { table } from './table.js';
/** A piece of a line: a figure, a fraction sign such as ½, a word, or one other sign. */
export type Token = {
  kind: 'figure' | 'glyph' | 'word' | 'sign';
  text: string;
  /** The text in lower case with plain apostrophes, for looking words up. */
  low: string;
  start: number;
  end: number;
  /** True when white space stands before it. */
  spaced: boolean;
};

export type Line = { text: string; tokens: Token[] };

export const glyphs = table<[number, number]>({
  '½': [1, 2],
  '⅓': [1, 3],
  '⅔': [2, 3],
  '¼': [1, 4],
  '¾': [3, 4],
  '⅕': [1, 5],
  '⅖': [2, 5],
  '⅗': [3, 5],
  '⅘': [4, 5],
  '⅙': [1, 6],
  '⅚': [5, 6],
  '⅛': [1, 8],
  '⅜': [3, 8],
  '⅝': [5, 8],
  '⅞': [7, 8],
  '⅐': [1, 7],
  '⅑': [1, 9],
  '⅒': [1, 10],
});

// Separators inside a figure or a word differ from what they join, so the pattern never goes back over a text.
const piece =
  /(\d+(?:[.,]\d+)*|(?<![\p{L}\d.])\.\d+)|([½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞⅐⅑⅒])|([\p{L}\p{M}]+(?:['’-][\p{L}\p{M}]+)*)|(\s+)|([\s\S])/gu;

/** The pieces of one line, in order. */
export const tokensOf = (text: string): Line => {
  const tokens: Token[] = [];
  let spaced = false;
  for (const found of text.matchAll(piece)) {
    const [whole, figure, glyph, word, space] = found;
    if (space !== undefined) {
      spaced = true;
      continue;
    }
    const kind = figure ? 'figure' : glyph ? 'glyph' : word ? 'word' : 'sign';
    const start = found.index;
    const low = kind === 'word' ? whole.toLowerCase().replace(/’/g, "'") : whole;
    tokens.push({ kind, text: whole, low, start, end: start + whole.length, spaced });
    spaced = false;
  }
  return { text, tokens };
};

/** The words of some tokens as the line writes them. */
export const wordsOf = ({ text }: Line, tokens: readonly Token[]): string => {
  const [first] = tokens;
  const last = tokens.at(-1);
  return first && last ? text.slice(first.start, last.end).replace(/\s+/g, ' ') : '';
};

export const isWord = (token: Token | undefined, ...words: string[]): boolean =>
  token?.kind === 'word' && words.includes(token.low);

export const isSign = (token: Token | undefined, ...signs: string[]): boolean =>
  token?.kind === 'sign' && signs.includes(token.text);

const dashes = ['-', '–', '—', '−', '‐', '‑'];
export const isDash = (token: Token | undefined): boolean => isSign(token, ...dashes);
