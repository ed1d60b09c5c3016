import { cups } from '../../facts/kitchen.js';
import { Rational } from '../../quantity/rational.js';
import { quantity } from '../../quantity/units.js';
import { type Amount, amountAt, bracketAt, joinedMeasureAt } from './bracket.js';
import { figureAt } from './figures.js';
import type { Head } from './head.js';
import { countAt } from './measures.js';
import { table } from './table.js';
import { isDash, isSign, isWord, type Line, wordsOf } from './tokens.js';

/** What follows a measured amount and still belongs to it: a range's end, ounces after pounds, the other system. */
export const afterAmount = (line: Line, head: Head): void => {
  rangeEnd(line, head);
  andAHalf(line, head);
  smallerUnit(line, head);
  for (;;) if (!otherSystem(line, head)) break;
  anotherAmount(line, head);
};

/** The size of each told again: "1 x 1.5kg/3lb 5oz chicken". */
export const afterSize = (line: Line, head: Head): void => {
  const { tokens } = line;
  const bracket = bracketAt(tokens, head.end);
  if (bracket?.closed && toldAgain(bracket.inner)) {
    head.notes.push(wordsOf(line, bracket.inner));
    head.end = bracket.end;
    return;
  }
  const next = isSign(tokens[head.end], '/') ? amountAt(tokens, head.end + 1) : undefined;
  if (!next) return;
  head.notes.push(wordsOf(line, tokens.slice(head.end + 1, next.end)));
  head.end = next.end;
  smallerPart(line, head);
};

/** "200 g – 250 g", "2 tbsp to 3 tbsp". */
const rangeEnd = ({ tokens }: Line, head: Head): void => {
  if (head.to || !(isDash(tokens[head.end]) || isWord(tokens[head.end], 'to'))) return;
  const to = amountAt(tokens, head.end + 1);
  if (!to || to.to || to.unit !== head.unit) return;
  head.to = to.value;
  head.end = to.end;
  if (to.value.compare(head.quantity!) <= 0) head.because.push('The range does not rise.');
};

/** "a cup and a half of". */
const andAHalf = ({ tokens }: Line, head: Head): void => {
  const [and, a, half] = tokens.slice(head.end, head.end + 3);
  if (head.to || !isWord(and, 'and') || !isWord(a, 'a') || !isWord(half, 'half')) return;
  head.quantity = head.quantity!.plus(Rational.of(1, 2));
  head.end += 3;
};

const smaller = table<{ unit: string; of: number }>({
  lb: { unit: 'oz', of: 16 },
  kg: { unit: 'g', of: 1000 },
  l: { unit: 'ml', of: 1000 },
});

/** "1 lb 4 oz", "1 kg and 200 g": the smaller unit is so much of the larger whatever the kitchen. */
const smallerUnit = ({ tokens }: Line, head: Head): void => {
  const part = smaller[head.unit ?? ''];
  const joint = isWord(tokens[head.end], 'and', 'plus') || isSign(tokens[head.end], '+', '&', ',');
  const next = part && !head.to ? amountAt(tokens, head.end + (joint ? 1 : 0)) : undefined;
  if (!part || !next || next.to || next.unit !== part.unit) return;
  head.quantity = head.quantity!.plus(next.value.over(Rational.of(part.of)));
  head.end = next.end;
};

/** "/170g", "(8 oz)", "or 225 g": the same amount told again. True when one was read. */
const otherSystem = (line: Line, head: Head): boolean => {
  const { tokens } = line;
  const bracket = bracketAt(tokens, head.end);
  if (bracket?.closed) {
    const again = toldAgain(bracket.inner);
    if (!again) return false;
    agree(head, again);
    head.notes.push(wordsOf(line, bracket.inner));
    head.end = bracket.end;
    return true;
  }
  const start = head.end;
  const marked = isSign(tokens[start], '/', '|', ',') || isDash(tokens[start]);
  if (!marked && !isWord(tokens[start], 'or')) return false;
  const next = amountAt(tokens, start + 1) ?? countBehindStroke(line, start);
  if (!next) return false;
  if ('count' in next) {
    head.notes.push(wordsOf(line, tokens.slice(start + 1, next.end)));
    head.end = next.end;
    return true;
  }
  agree(head, wholeOf(line, next));
  head.notes.push(wordsOf(line, tokens.slice(isWord(tokens[start], 'or') ? start : start + 1, next.end)));
  head.end = next.end;
  smallerPart(line, head);
  return true;
};

/** "115g/1 stick butter": the same amount told in pieces. */
const countBehindStroke = ({ tokens }: Line, at: number) => {
  const figure = isSign(tokens[at], '/') ? figureAt(tokens, at + 1) : undefined;
  const count = figure && countAt(tokens, figure.end);
  return count && tokens[count.end]?.kind === 'word' ? { count: true, end: count.end } : undefined;
};

/** "2lb 4oz" as pounds. */
const wholeOf = ({ tokens }: Line, amount: NonNullable<Amount>): NonNullable<Amount> => {
  const part = smaller[amount.unit];
  const next = part && !amount.to ? amountAt(tokens, amount.end) : undefined;
  if (!part || next?.unit !== part.unit) return amount;
  return { ...amount, value: amount.value.plus(next.value.over(Rational.of(part.of))) };
};

/** The ounces of "1kg/2lb 4oz" belong to the note before them. */
const smallerPart = (line: Line, head: Head): void => {
  const next = amountAt(line.tokens, head.end);
  if (!next || head.notes.length === 0) return;
  head.notes.push(`${head.notes.pop()} ${wordsOf(line, line.tokens.slice(head.end, next.end))}`);
  head.end = next.end;
};

const toldAgain = (inner: Parameters<typeof amountAt>[0]): Amount => {
  const about = isWord(inner[0], 'about', 'approx', 'approximately', 'around', 'roughly') ? 1 : 0;
  const amount = amountAt(inner, about + (isSign(inner[about], '.') ? 1 : 0));
  if (!amount) return undefined;
  const rest = inner[amount.end];
  return !rest || isSign(rest, '/', ',', ';') || amountAt(inner, amount.end) ? amount : undefined;
};

const near = (a: Rational, b: Rational): boolean => {
  const ratio = a.over(b).toNumber();
  return ratio > 0.85 && ratio < 1.18;
};

/** The two amounts must be the same within a kitchen's rounding under some cup, else which one holds is in doubt. */
const agree = (head: Head, again: NonNullable<Amount>): void => {
  if (!head.quantity || !head.unit || again.value.isZero) return;
  const pairs = cups.flatMap((cup) =>
    cups.map(
      (other) =>
        [quantity(head.quantity!, head.unit!, cup), quantity(again.value, again.unit, other)] as const,
    ),
  );
  const comparable = pairs.filter(([a, b]) => a.base === b.base && ['g', 'ml'].includes(a.base));
  if (comparable.length > 0 && !comparable.some(([a, b]) => near(a.value, b.value)))
    head.because.push('The amount is told twice, and the two differ.');
};

/** "1 cup plus 2 tbsp sugar": how much that is in all turns on the cup, so it stays a note. */
export const anotherAmount = (line: Line, head: Head): void => {
  const { tokens } = line;
  const joint =
    isWord(tokens[head.end], 'plus', 'and', 'minus', 'less') || isSign(tokens[head.end], '+', '&');
  const start = joint ? head.end + 1 : head.end;
  const next = figureAt(tokens, start);
  const unit = next && (joinedMeasureAt(tokens, next.end) ?? (joint ? countAt(tokens, next.end) : undefined));
  if (!next || !unit || !tokens[unit.end]) return;
  const last = isWord(tokens[unit.end], 'of') ? unit.end + 1 : unit.end;
  head.notes.push(wordsOf(line, tokens.slice(head.end, unit.end)));
  head.because.push('Two amounts are stated, and only the first is read as the amount.');
  head.end = last;
};
