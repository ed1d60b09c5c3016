import type { Measure } from '../../facts/common.js';
import { figureAt } from './figures.js';
import { isMeasuredUnit, measureAt, type UnitRead } from './measures.js';
import { table } from './table.js';
import { isDash, isSign, isWord, type Token } from './tokens.js';

/** A figure with its weight or volume. */
export type Amount = ReturnType<typeof amountAt>;

/** A figure followed by a weight or volume, "400 g", "14-ounce"; undefined when it is anything else. */
export const amountAt = (tokens: readonly Token[], at: number) => {
  const figure = figureAt(tokens, at);
  if (!figure || isWord(tokens[at], 'a', 'an')) return undefined;
  const unit = joinedMeasureAt(tokens, figure.end);
  return unit && { ...figure, unit: unit.unit, end: unit.end, doubt: figure.doubt ?? unit.doubt };
};

/** A weight or volume, a hyphen before it or not: "g", "-ounce". */
export const joinedMeasureAt = (tokens: readonly Token[], at: number): UnitRead | undefined => {
  const hyphen = isDash(tokens[at]) && !tokens[at + 1]?.spaced;
  return measureAt(tokens, hyphen ? at + 1 : at);
};

/** What one holds, when the amount is one exact figure. */
export const packOf = (amount: NonNullable<Amount>): Measure | null =>
  amount.to === null && isMeasuredUnit(amount.unit)
    ? { amount: amount.value.toString(), unit: amount.unit }
    : null;

export type Bracket = { inner: Token[]; end: number; closed: boolean };

const closing = table<string>({ '(': ')', '[': ']', '{': '}' });

/** The bracket that opens at a token, brackets inside it included; one that never closes runs to the end. */
export const bracketAt = (tokens: readonly Token[], at: number): Bracket | undefined => {
  const opening = tokens[at]?.kind === 'sign' ? tokens[at].text : '';
  const close = closing[opening];
  if (!close) return undefined;
  let depth = 0;
  for (let i = at; i < tokens.length; i++) {
    if (isSign(tokens[i], opening)) depth++;
    if (isSign(tokens[i], close)) depth--;
    if (depth === 0) return { inner: tokens.slice(at + 1, i), end: i + 1, closed: true };
  }
  return { inner: tokens.slice(at + 1), end: tokens.length, closed: false };
};

/** The size a bracket states and nothing else, with the same told again: "(400 g)", "(14-ounce)", "(400g/14oz)". */
export const sizeIn = (
  inner: readonly Token[],
): { pack: Measure; each: boolean; again: Token[] } | undefined => {
  const amount = amountAt(inner, 0);
  const pack = amount && packOf(amount);
  if (!amount || !pack) return undefined;
  const second = isSign(inner[amount.end], '/') ? amountAt(inner, amount.end + 1) : undefined;
  const end = second?.end ?? amount.end;
  const each = isWord(inner[end], 'each');
  if (end + (each ? 1 : 0) !== inner.length) return undefined;
  return { pack, each, again: second ? inner.slice(amount.end + 1, end) : [] };
};
