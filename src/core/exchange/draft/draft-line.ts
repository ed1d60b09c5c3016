import type { Measure } from '../../facts/common.js';
import type { Ingredient } from '../../facts/ingredient.js';
import type { Line } from '../../facts/recipe.js';
import { exact } from '../../quantity/amount.js';
import { Rational } from '../../quantity/rational.js';
import { baseOf, isMeasured, quantity } from '../../quantity/units.js';
import { isMeasuredUnit, isWeight } from '../lines/measures.js';
import type { LineReading } from '../lines/reading.js';
import type { Match } from './kitchen-names.js';

/** A line of a recipe as it was read, before anybody knows what its food is in this kitchen. */
export type BegunLine = Pick<Line, 'amount' | 'amountTo' | 'unit' | 'preparation' | 'stated'> & {
  food: string;
  /** What one of its unit holds, by the line's own words. */
  holds: Measure | null;
};

/** A reading as a recipe may keep it; exact figures as they were read. What is no line keeps its words as the food. */
export const begin = (read: LineReading): BegunLine => ({
  amount: read.quantity,
  amountTo: read.quantityTo,
  unit: read.unit ?? 'each',
  food: (read.kind === 'line' ? read.food : (read.heading ?? '')).slice(0, 120),
  preparation: (read.kind === 'line' ? withoutTaste(read) : '').slice(0, 200),
  stated: read.stated,
  holds: read.pack,
});

/** What goes in to taste says so by itself. */
const withoutTaste = ({ note, quantity }: LineReading): string =>
  quantity === null ? note.replace(/(?:^|,\s*)to taste\b/i, '').replace(/^,\s*/, '') : note;

/** Said of a line that may hold two foods; making two lines of it settles that. */
export const namesTwo = 'The line may name more than one food.';

/** The foods that a name joins: "salt and pepper" are two; a name that joins none is one. */
export const foodsIn = (name: string): string[] =>
  name
    .split(/\s*(?:,| and | & |\+)\s*/i)
    .map((food) => food.trim())
    .filter(Boolean);

const named = (known: readonly { text: string }[]): string =>
  known.map(({ text }) => `“${text}”`).join(known.length > 2 ? ', ' : ' and ');

/**
 * Why a line needs the cook: what the reader doubts, and what its food means in this kitchen; none when all is plain.
 * `match` is undefined where the food is an ingredient that is new with this recipe.
 */
export const doubtsOf = (
  read: Pick<LineReading, 'because' | 'note' | 'pack' | 'quantity' | 'stated' | 'unit'> | undefined,
  match: Match | undefined,
  food: string,
  ingredient: (Pick<Ingredient, 'weights'> & Partial<Pick<Ingredient, 'edibleYield'>>) | undefined,
): string[] => {
  const because = [...(read?.because ?? [])];
  if (food.trim() === '') because.push('Which ingredient it is, is not known.');
  else if (match?.kind === 'none') because.push(`This kitchen has no “${food.trim()}” yet.`);
  else if (match?.kind === 'near')
    because.push(`This kitchen has no “${food.trim()}”; it has ${named(match.known)}.`);
  else if (match?.kind === 'both')
    because.push(`There is an ingredient and a recipe called “${food.trim()}”: choose which.`);
  // What a tin holds can only be asked of an ingredient that is known.
  const pack = read && (!match || match.kind === 'exact') && packDoubt(read, ingredient);
  if (pack) because.push(pack);
  if (read && isEitherWeight(read) && trims(ingredient?.edibleYield?.yield)) because.push(whichWeight);
  if (read && food.trim() !== '' && isLoose(read, food)) because.push(noAmount);
  return because;
};

/** Said of a weight of what is trimmed: 2.5 kg of leg of lamb are bought, or they are 3.2 kg bought. */
export const whichWeight = 'Whether that is the weight as bought or of the part that is eaten is not said.';

/** A weight of which the words do not say whether it is before or after trimming. */
export const isEitherWeight = ({ stated, unit }: Pick<LineReading, 'stated' | 'unit'>): boolean =>
  stated === 'usual' && isWeight(unit);

/** Whether as much is trimmed off or swells up as is worth asking about: a twentieth or more. */
const trims = (edible: string | undefined): boolean => {
  if (edible === undefined) return false;
  const percent = Number(exact(edible).times(Rational.of(100)).round());
  return percent <= 95 || percent >= 105;
};

const noAmount = 'How much is not said: as it stands it goes in to taste, and costs and weighs nothing.';

/** No amount, of what is not seasoned with: oil to fry in is money, salt is not. */
const isLoose = ({ quantity, note }: Pick<LineReading, 'quantity' | 'note'>, food: string): boolean =>
  quantity === null &&
  !/\bto (?:taste|season)\b/i.test(note) &&
  !/\b(?:salt|pepper|seasoning|water)\b/i.test(food);

/** What one tin holds by the line's words, where the kitchen does not know it or knows another figure. */
const packDoubt = (
  { pack, unit }: Pick<LineReading, 'pack' | 'unit'>,
  ingredient: Pick<Ingredient, 'weights'> | undefined,
): string | undefined => {
  if (!pack || !unit) return undefined;
  const said = `The line says that one ${unit === 'each' ? 'piece' : unit} holds ${pack.amount} ${pack.unit}`;
  const known = weightOf(unit, ingredient);
  if (!known) return `${said}, which this kitchen does not know yet.`;
  const { value, base } = quantity(exact(pack.amount), pack.unit, 'metric');
  return base === 'g' && value.equals(exact(known.grams))
    ? undefined
    : `${said}; this kitchen knows ${known.grams} g and goes by that.`;
};

/** The weight of one of a unit that an ingredient has; undefined when it has none. */
export const weightOf = (unit: string, ingredient: Pick<Ingredient, 'weights'> | undefined) =>
  ingredient?.weights.find((one) => baseOf(one.unit) === baseOf(unit));

/**
 * What the kitchen must still know of an ingredient before it can weigh a line, as a sentence; undefined when nothing
 * is missing, or nobody knows yet which ingredient it is. The line can be saved all the same.
 */
export const askOf = (
  { amount, unit }: Pick<Line, 'amount' | 'unit'>,
  ingredient: Pick<Ingredient, 'name' | 'weights' | 'density' | 'packs'> | undefined,
): string | undefined => {
  if (amount === null || !ingredient) return undefined;
  const { name, density, packs } = ingredient;
  const base = baseOf(unit);
  if (base === 'g' || packs.some(({ size }) => baseOf(size.unit) === base)) return undefined;
  if (base === 'ml') return density ? undefined : `What a measure of ${name} weighs is not known yet.`;
  const one = base === 'each' ? 'piece' : base;
  return weightOf(unit, ingredient) ? undefined : `What one ${one} of ${name} weighs is not known yet.`;
};

/** Whether what one of a unit weighs can be asked: a count, of which there is an amount. */
export const canHold = ({ amount, unit }: Pick<Line, 'amount' | 'unit'>): boolean =>
  amount !== null && !isMeasured(unit) && !['portion', 'batch'].includes(unit);

/** "2 tins" of 400 g each as the 800 g they hold; exact. undefined when no size is stated. */
export const inAll = (
  read: LineReading,
): { amount: string; amountTo: string | null; unit: string } | undefined => {
  const { pack, quantity, quantityTo } = read;
  if (!pack || quantity === null || !isMeasuredUnit(pack.unit)) return undefined;
  const size = exact(pack.amount);
  return {
    amount: exact(quantity).times(size).toString(),
    amountTo: quantityTo === null ? null : exact(quantityTo).times(size).toString(),
    unit: pack.unit,
  };
};
