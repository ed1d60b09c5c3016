import type { Kitchen } from './facts/kitchen.js';
import { type Tin, tin } from './facts/recipe.js';
import { readAmount } from './quantity/amount.js';
import { Rational } from './quantity/rational.js';
import { isRead, type Read, readMoreThanZero, readWhole } from './reading.js';

export type Shape = Tin['shape'];
export const shapes: readonly Shape[] = ['round', 'square', 'rectangular', 'ring', 'loaf'];

/** What a cook types of tins: shape, sides "20 × 30 cm", how many, how deep; the last two may be left empty. */
export type TypedTin = { shape: string; sides: string; count: string; depth: string };

export type TinField = keyof TypedTin;

const examples: Record<Shape, string> = {
  round: '23 cm',
  square: '20 cm',
  rectangular: '20 x 30 cm',
  ring: '24 x 8 cm, across and across the hole',
  loaf: '23 x 13 cm',
};

const refuse = (sentence: string) => ({ sentence });
const cited = (text: string): string =>
  text.trim().length > 40 ? `${text.trim().slice(0, 40)}…` : text.trim();

/**
 * Reads tins field by field; `refused` is told which could not be read and why. A bare figure is in the unit of `like`, a
 * tin that is there already, else in the kitchen's.
 */
export const readTin = (
  typed: TypedTin,
  kitchen: Pick<Kitchen, 'units'>,
  refused: (field: TinField, sentence: string) => void,
  like: Tin | null = null,
): Tin | null => {
  const shape = shapes.find((one) => one === typed.shape) ?? 'round';
  const sides = readSides(typed.sides, shape, like?.unit ?? (kitchen.units === 'us' ? 'in' : 'cm'));
  const count: Read<number> =
    typed.count.trim() === '' ? { value: 1 } : readWhole(typed.count, 'how many tins', 1, 500);
  const depth = readDepth(typed.depth, isRead(sides) ? sides.value.unit : 'cm');
  if (!isRead(sides)) refused('sides', sides.sentence);
  if (!isRead(count)) refused('count', count.sentence);
  if (!isRead(depth)) refused('depth', depth.sentence);
  if (!isRead(sides) || !isRead(count) || !isRead(depth)) return null;
  const read = tin.safeParse({ ...sides.value, count: count.value, depth: depth.value });
  if (!read.success) refused('sides', `Enter the inside of the tin, such as ${examples[shape]}.`);
  return read.data ?? null;
};

/** What stands before the unit, and the unit; a text longer than any tin's is cut, so that no paste is read for long. */
const withUnit = (text: string) => split.exec(text.trim().toLowerCase().slice(0, 60)) ?? [];
const split = /^(.*?)\s*(cm|mm|in|inch|inches|["″”])?$/;

const unitOf = (word: string): Tin['unit'] => (word === 'cm' || word === 'mm' ? 'cm' : 'in');

const readSides = (text: string, shape: Shape, usual: Tin['unit']): Read<Tin> => {
  const example = `Enter the inside of the tin, such as ${examples[shape]}.`;
  const entered = text.trim() ? ` You entered ${cited(text)}.` : '';
  const [, figures = '', typedUnit] = withUnit(text);
  const parts = figures
    .split(/\s*(?:[x×*]|\bby\b)\s*/)
    .map((part) => part.replace(/\s*(cm|mm|in|["″”])$/, ''));
  const read = parts.map((part) => readMoreThanZero(part));
  const wrong = read.find((one) => !isRead(one));
  if (parts[0] === '') return refuse(`${example}${entered}`);
  if (wrong)
    return refuse(
      parts.every((part) => /^0+([.,]0*)?$/.test(part))
        ? `A side is above zero. ${example}`
        : `${example}${entered}`,
    );
  const word = typedUnit ?? usual;
  const unit = unitOf(word);
  const others = figures.match(/(?:cm|mm|in|["″”])(?=\s*(?:[x×*]|by\b))/g) ?? [];
  if (others.some((other) => other.replace(/["″”]/, 'in') !== word.replace(/^inch(?:es)?$|["″”]/, 'in')))
    return refuse(`${example}${entered}`);
  const sides = read.map((one) => (isRead(one) ? inUnit(one.value, word) : ''));
  return shaped(shape, sides, unit) ?? refuse(`${example}${entered}`);
};

/** A tenth of a centimetre is a millimetre. */
const inUnit = (side: string, word: string): string =>
  word === 'mm' ? Rational.parse(side).over(Rational.of(10)).toString() : side;

const shaped = (shape: Shape, [a, b, ...more]: string[], unit: Tin['unit']): Read<Tin> | undefined => {
  const rest = { unit, count: 1, depth: null };
  if (!a || more.length > 0) return undefined;
  if (shape === 'round') return b ? undefined : { value: { shape, diameter: a, ...rest } };
  if (shape === 'square') return b && b !== a ? undefined : { value: { shape, side: a, ...rest } };
  if (!b) return undefined;
  if (shape !== 'ring') return { value: { shape, length: a, width: b, ...rest } };
  if (Rational.parse(b).compare(Rational.parse(a)) >= 0)
    return refuse(`The hole of a ring is smaller than the ring. Enter ${examples.ring}.`);
  return { value: { shape, diameter: a, hole: b, ...rest } };
};

const inch = Rational.parse('2.54');

/** How deep, "7" or "7 cm", in the unit of the sides, turned into it where it names the other; empty when not known. */
const readDepth = (text: string, unit: Tin['unit']): Read<string | null> => {
  if (text.trim() === '') return { value: null };
  const [, figure = '', word = unit] = withUnit(text);
  const read = readAmount(figure);
  if ('sentence' in read || Rational.parse(read.amount).isZero)
    return refuse(`Enter how deep the tin is, such as 7 cm, or leave it empty. You entered ${cited(text)}.`);
  const depth = Rational.parse(inUnit(read.amount, word));
  if (unitOf(word) === unit) return { value: depth.toString() };
  return { value: (unit === 'cm' ? depth.times(inch) : depth.over(inch)).toString() };
};
