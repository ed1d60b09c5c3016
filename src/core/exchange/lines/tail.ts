import { Rational } from '../../quantity/rational.js';
import { extentsEnd } from './count-unit.js';
import { figureAt } from './figures.js';
import { type Head, headOf, noHead } from './head.js';
import { countAt, isMeasuredUnit, isPlural } from './measures.js';
import { isPrepared } from './readied.js';
import { isDash, isSign, isWord, type Line, type Token, wordsOf } from './tokens.js';
import { approximations, parts, partWords, sizes } from './words.js';

/** An amount that stands behind its food, with what is left of the line: "flour 200 g", "eggs x 3", "lemon (1)". */
export type Tail = { head: Head; rest: Token[] };

/** True when some figure that is not a per cent stands in the line. */
export const holdsFigure = ({ tokens }: Line): boolean =>
  tokens.some(({ kind }, at) => kind === 'glyph' || (kind === 'figure' && !isSign(tokens[at + 1], '%')));

/** The first amount behind a food; undefined when the line holds none that ends a stretch of words. */
export const tailOf = (line: Line): Tail | undefined => {
  const { tokens } = line;
  for (let at = 1; at < tokens.length; at++) {
    const inWords = tokens[at]!.kind === 'word';
    if (tokens[at]!.kind === 'sign') continue;
    const head = figureAt(tokens, at) ? headOf(line, at, true) : undefined;
    if (!head && inWords) continue;
    if (!head) return undefined;
    const part = partStart(tokens, at);
    const lead = leadOf(tokens, part);
    // "cream - half a pint": in words, only behind a mark and with a unit.
    if (inWords && (lead.start === part || head.unit === 'each')) continue;
    const closing = lead.bracket ? tokens.findIndex((token, i) => i >= head.end && isSign(token, ')')) : -1;
    const inside = tokens.slice(head.end, Math.max(closing, head.end));
    const closes = closing >= 0 && (isSign(inside[0], ',') || inside.every(({ low }) => sizes.has(low)));
    const end = closes ? closing + 1 : head.end;
    const clear =
      head.unit !== 'each' ||
      lead.marked ||
      end === tokens.length ||
      isSign(tokens[end], ',') ||
      sizes.has(tokens[end]?.low ?? '');
    if (lead.bracket !== closes || !clear || lead.start === 0) continue;
    if (isWord(tokens[lead.start - 1], 'from')) continue;
    if (!ends(tokens, end)) {
      if (!isMeasuredUnit(head.unit)) continue;
      head.because.push('Words of the name may stand behind the amount.');
    }
    if (head.unit === 'piece' && head.notes.some((said) => /^\d+ (?:inch|cm)/.test(said)))
      head.because.push('The figure may be how many, and a length.');
    if (part < at) head.notes.unshift(wordsOf(line, tokens.slice(part, at - 1)));
    if (part < at || inWords || (lead.about && isSign(tokens[lead.start], ',')))
      head.because.push('How many are meant is read from what stands behind the name.');
    if (lead.about) head.notes.unshift(wordsOf(line, [lead.about]));
    return {
      head,
      rest: [
        ...tokens.slice(0, lead.start),
        comma(tokens[at]!),
        ...inside,
        comma(tokens[at]!),
        ...tokens.slice(end),
      ],
    };
  }
  return oneBehind(line);
};

/** "salt, a pinch", "basil - handful of", "thyme, a few sprigs", "parsley (small bunch)": a count unit behind a mark. */
const oneBehind = (line: Line): Tail | undefined => {
  const bracket = isSign(line.tokens.at(-1), ')');
  const inside = bracket ? line.tokens.slice(0, -1) : line.tokens;
  const tokens = isWord(inside.at(-1), 'of') ? inside.slice(0, -1) : inside;
  const cut = tokens.findLastIndex((token) =>
    bracket ? isSign(token, '(') : isSign(token, ',', ':') || (isDash(token) && token.spaced),
  );
  if (cut < 1) return onePinchBehind(tokens);
  const article = isWord(tokens[cut + 1], 'a', 'an') ? 1 : 0;
  const few = isWord(tokens[cut + 1 + article], 'few', 'several', 'some');
  const said = few ? cut + 1 : cut + 1 + article;
  const at = extentsEnd(tokens, few ? said + article + 1 : said);
  const count = countAt(tokens, at);
  if (!count || count.end !== tokens.length || isPlural(tokens[at]) !== few) return undefined;
  const head = {
    ...noHead,
    quantity: few ? null : Rational.one,
    unit: count.unit,
    notes: at > said ? [wordsOf(line, tokens.slice(said, at))] : [],
    because: bracket || at > said ? ['How many are meant is read from what stands behind the name.'] : [],
  };
  return { head, rest: tokens.slice(0, cut) };
};

/** "saffron a pinch": no mark before it. */
const onePinchBehind = (tokens: readonly Token[]): Tail | undefined => {
  const cut = tokens.length - 2;
  const count = cut > 0 && isWord(tokens[cut], 'a') ? countAt(tokens, cut + 1) : undefined;
  if (!count || !['pinch', 'dash', 'handful', 'bunch', 'splash', 'knob'].includes(count.unit))
    return undefined;
  const because = ['How many are meant is read from what stands behind the name.'];
  const head = { ...noHead, quantity: Rational.one, unit: count.unit, notes: [], because };
  return { head, rest: tokens.slice(0, cut) };
};

const comma = (at: Token): Token => ({ ...at, kind: 'sign', text: ',', low: ',', spaced: false });

const ends = (tokens: readonly Token[], at: number): boolean => {
  const next = tokens[at];
  return (
    !next ||
    isSign(next, ',', ';', '(', ')', '.', '/') ||
    isDash(next) ||
    isPrepared(next) ||
    sizes.has(next.low)
  );
};

/** Back over "juice of" before a figure: "lemons (juice of 4)". */
const partStart = (tokens: readonly Token[], at: number): number => {
  let start = at;
  if (isWord(tokens[at - 1], 'of') && parts.has(tokens[at - 2]?.low ?? '')) start = at - 2;
  while (
    start < at &&
    (parts.has(tokens[start - 1]?.low ?? '') || partWords.has(tokens[start - 1]?.low ?? ''))
  )
    start--;
  return start;
};

/** Steps back over what only joins: "-", ":", "x", "(", "…", "about". */
const leadOf = (tokens: readonly Token[], at: number) => {
  let start = at;
  let marked = false;
  let bracket = false;
  let about: Token | undefined;
  while (start > 0) {
    const before = tokens[start - 1]!;
    if (isSign(before, '(')) bracket = true;
    else if (before.kind === 'word' && approximations.has(before.low)) about = before;
    else if (!isDash(before) && !isSign(before, ':', ',', '=', '.', '…', '×', '~') && !isWord(before, 'x'))
      break;
    if (!isSign(before, ',')) marked = true;
    start--;
  }
  return { start, marked, bracket, about };
};
