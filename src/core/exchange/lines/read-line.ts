import { Rational } from '../../quantity/rational.js';
import { alternativeIn } from './alternatives.js';
import { sizeIn } from './bracket.js';
import { doubtsOfCount, doubtsOfFood, doubtsOfNotes } from './doubts.js';
import { figureAt } from './figures.js';
import { type Food, foodOf } from './food.js';
import { type Head, headOf, noHead } from './head.js';
import { dishes, dishParts, headingOf } from './heading.js';
import { leadOf } from './lead.js';
import { countAt, isContainer, isPlural, isShopPack, measureAt } from './measures.js';
import { partOf } from './part-of.js';
import { type LineReading, nothingRead } from './reading.js';
import { statedOf } from './stated.js';
import { tailOf } from './tail.js';
import { tidy } from './tidy.js';
import { isSign, isWord, type Line, type Token, tokensOf, wordsOf } from './tokens.js';
import { trailingUnit } from './trailing-unit.js';
import { oneOf, vagueOf } from './without-figure.js';

/** Longer than any line of a list of ingredients. */
export const longestLine = 400;

/**
 * Reads one line of a recipe's list: amount as exact text in its unit, food, note, the size of a pack. Nothing is
 * reckoned or rounded. Where a line can be read in more than one way it is not sure and says why; it never throws.
 */
export const readLine = (text: string): LineReading => {
  if (text.length > longestLine) return notALine('', 'It is longer than a line of ingredients.');
  const plain = tidy(text);
  if (plain === '') return nothingRead;
  const heading = headingOf(plain);
  if (heading !== undefined) return { ...nothingRead, kind: 'heading', heading };
  const whole = tokensOf(plain);
  const lead = leadOf(whole);
  const line: Line = { text: plain, tokens: whole.tokens.slice(lead.end) };
  const part = partOf(line.tokens);
  const joint = isWord(line.tokens[part - 1], 'of', 'from') ? 1 : 0;
  const partNote = wordsOf(line, line.tokens.slice(0, part - joint)).replace(/^the /i, '');
  const head = part > 0 ? (headOf(line, part) ?? bare(part)) : (vagueOf(line) ?? headOf(line) ?? oneOf(line));
  const tail = head ? undefined : tailOf(line);
  if (!head && isSentence(plain, line, tail !== undefined))
    return notALine(plain, 'It does not read as an ingredient.');
  const amount = head ?? tail?.head ?? bare(0);
  const rest = tail ? tail.rest : line.tokens.slice(amount.end);
  return compose(line, amount, rest, [lead.note, partNote].filter(Boolean));
};

const notALine = (words: string, why: string): LineReading => ({
  ...nothingRead,
  kind: 'words',
  note: words,
  sure: false,
  because: [why],
});

const bare = (end: number): Head => ({ ...noHead, notes: [], because: [], end });

const speaks =
  /^(?:serves?|makes|yields?|prep|preparation|cook(?:ing)? time|total|ready in|method|directions?|instructions?|preheat|heat|bake|mix|stir|add|place|put|bring|pour|combine|whisk)\b[^,]*(?:\d|:|\.|\bthe\b)/i;

const isSentence = (plain: string, { tokens }: Line, hasAmount: boolean): boolean =>
  speaks.test(plain) || (!hasAmount && tokens.filter(({ kind }) => kind === 'word').length > 12);

const compose = (line: Line, head: Head, rest: readonly Token[], lead: string[]): LineReading => {
  const asBought = isShopPack(head.unit);
  const found = foodOf(line, rest, asBought);
  const because = [...head.because];
  const named = nameOf(line, head, found, because);
  const pack = head.pack ?? packBehind(head, found, because);
  const before = [...lead, ...head.notes, ...found.before];
  const after = [...named.notes, ...found.after];
  const stated = statedOf(head.unit, found.before, after);
  because.push(...doubtsOfFood(named.food, named.name, asBought, before));
  because.push(...doubtsOfNotes(line, found), ...doubtsOfCount(head.unit, found), ...stated.because);
  if (head.quantity === null) because.push(...withoutAmount(rest, named.name));
  if (rest.some((token) => isSign(token, '/') && token.spaced))
    because.push('A stroke may part foods, or what is to be done.');
  if (found.before.some((words) => /\b(?:or|plus|minus|less) [\d½⅓⅔¼¾⅛]/i.test(words)))
    because.push('Two amounts are stated, and only the first is read as the amount.');
  if (head.pack && named.unit === 'each' && head.crossed && !isPlural(named.food.at(-1)))
    because.push('Whether pieces are counted, or what they weigh in all, is not said.');
  if (mayBeRange(line, head, named.food))
    because.push('A stroke may stand between two figures, or in a part.');
  if (
    named.unit === 'each' &&
    isWord(named.food[0], 'bean', 'grain', 'cheese', 'seed') &&
    named.food.length > 1
  )
    because.push('The figure may belong to the name.');
  if (found.open) because.push('A bracket opens and never closes.');
  if (head.quantity?.isZero) because.push('An amount of nothing is stated.');
  return {
    ...nothingRead,
    kind: 'line',
    quantity: head.quantity?.toString() ?? null,
    quantityTo: head.to?.toString() ?? null,
    unit: named.unit,
    food: named.name,
    note: [...before, ...after].filter(Boolean).join(', '),
    pack,
    stated: stated.stated,
    sure: because.length === 0,
    because: [...new Set(because)],
  };
};

/** "2/3 carrots": two thirds, or two to three. */
const mayBeRange = ({ text }: Line, { unit, quantity }: Head, food: readonly Token[]): boolean =>
  unit === 'each' &&
  quantity !== null &&
  quantity.compare(Rational.one) < 0 &&
  /^\d+ ?\/ ?\d+ /.test(text) &&
  isPlural(food.at(-1));

/** Said of a bare word that names a part of a dish. */
export const mayBeHeading = 'It may be a heading.';

/** What a line without an amount may be after all. */
const withoutAmount = (rest: readonly Token[], name: string): string[] => {
  if (dishParts.test(name) || (dishes.test(name) && rest.length < 4)) return [mayBeHeading];
  const figure = rest.find(
    ({ kind, low }, at) =>
      kind === 'glyph' ||
      (kind === 'figure' && !isSign(rest[at + 1], '%')) ||
      (kind === 'word' && low !== 'a' && low !== 'an' && figureAt(rest, at) !== undefined) ||
      (low.length > 1 && measureAt(rest, at) !== undefined) ||
      isOneOf(rest, at, name),
  );
  return figure ? [`"${figure.text}" is not read as an amount.`] : [];
};

const ones = new Set('clove bunch sprig handful pinch knob dash splash drizzle dozen'.split(' '));

/** "tomatoes (tin)": a tin or a pinch that is not part of the name stands for an amount. */
const isOneOf = (rest: readonly Token[], at: number, name: string): boolean => {
  const count = isWord(rest[at - 1], 'to') ? undefined : countAt(rest, at);
  if (!count || name.toLowerCase().includes(rest[at]!.low)) return false;
  const sold = isContainer(count.unit) && !(['piece', 'stick'].includes(count.unit) && isPlural(rest[at]));
  return sold || ones.has(count.unit);
};

/** The food's name once alternatives and a unit behind it are taken off. */
const nameOf = (line: Line, head: Head, found: Food, because: string[]) => {
  let { food, name } = found;
  let unit = head.unit;
  const notes: string[] = [];
  const other = alternativeIn(line, food);
  if (other) {
    ({ food, name } = other);
    notes.push(other.note);
    because.push('The line offers one food or another.');
  }
  const few = unit === null && /^(?:a )?few$/i.test(head.notes[0] ?? '');
  const behind = unit === 'each' || few ? trailingUnit(food) : undefined;
  if (behind) {
    unit = behind.unit;
    if (isShopPack(unit)) because.push('The pack is read from what stands behind the name.');
    food = food.slice(0, -behind.length);
    name = wordsOf(line, food);
  }
  return { food, name, unit, notes };
};

const bought = new Set(['block', 'ball', 'bar', 'loaf', 'log', 'wheel', 'slab', 'roll']);

/** What stands behind a tin, and behind one block or "each" of several, is what one holds. */
const holdsSize = ({ unit, quantity }: Head, each: boolean): boolean =>
  isShopPack(unit) ||
  (each && (unit === 'each' || isContainer(unit))) ||
  (bought.has(unit ?? '') && quantity?.toString() === '1');

/** "1 tin of chickpeas (400g)", "4 salmon fillets (150g each)": the size behind the food. */
const packBehind = (head: Head, found: Food, because: string[]) => {
  const behind = sizeIn(found.note);
  const at = found.tail.findIndex(({ tokens }) => sizeIn(tokens));
  const size = behind ?? (at >= 0 ? sizeIn(found.tail[at]!.tokens) : undefined);
  if (!size || !holdsSize(head, size.each)) return null;
  if (!size.each && head.quantity?.toString() !== '1')
    because.push('Whether the size is that of each is not said.');
  if (behind) found.after.shift();
  else found.after.splice(found.after.length - found.tail.length + at, 1);
  return size.pack;
};
