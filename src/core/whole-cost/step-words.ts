import type { CostLine } from '../facts/cost-line.js';
import type { Ingredient } from '../facts/ingredient.js';
import type { Step } from '../facts/recipe.js';
import { listed } from '../problems.js';
import { plural } from '../quantity/show.js';
import { preferredPack } from '../weighing.js';
import type { Jump, What } from './curve-jumps.js';

const counts = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];
const ordinals = 'first second third fourth fifth sixth seventh eighth ninth tenth'.split(' ');

const inWords = (count: number): string => counts[count] ?? String(count);

/** "46th", "41st"; the 11th to the 13th by their tens. */
export const nth = (count: number): string => {
  const teen = count % 100 > 10 && count % 100 < 14;
  return `${count}${teen ? 'th' : (['th', 'st', 'nd', 'rd'][count % 10] ?? 'th')}`;
};

const ordinal = (count: number): string => ordinals[count - 1] ?? nth(count);

/** "a third", "an eighth", "an 11th". */
const anOrdinal = (count: number): string => {
  const an = count === 11 || count === 18 || String(count).startsWith('8');
  return `${an ? 'an' : 'a'} ${ordinal(count)}`;
};

/** What a pack of it is called: by its unit where it holds one of that, such as a side or a tin. */
const packName = (ingredient: Ingredient): string => {
  const { size } = preferredPack(ingredient) ?? {};
  return size?.amount === '1' && size.unit.length > 2 && size.unit !== 'each' ? size.unit : 'pack';
};

type Named = Exclude<What, { of: 'work' | 'guest' }>;

const named = (what: Named): { name: string; noun: string } => {
  if (what.of === 'packs') {
    const { ingredient, shared } = what;
    return { name: `${ingredient.name}${shared ? ', bought together' : ''}`, noun: packName(ingredient) };
  }
  if ('line' in what) return { name: what.line.name, noun: what.of === 'people' ? 'person' : 'lot' };
  const name = `${what.name} in ${what.recipe.name}`;
  return { name, noun: what.of === 'pieces' ? 'piece' : 'batch' };
};

const many = (noun: string, count: number): string =>
  count === 1 ? noun : noun === 'person' ? 'people' : plural(noun, String(count));

/**
 * What steps up with the last of so many guests, in a sentence: "Salmon: at 45 guests three sides are enough; the 46th guest
 * needs a fourth."
 */
export const jumpWords = ({ what, from, to }: Jump, guests: number): string => {
  const guest = `the ${nth(guests)} guest`;
  if (what.of === 'guest') return `${what.group.name}: ${guest} is one of them.`;
  if (what.of === 'work') return workWords(what, to - from, guest);
  const { name, noun } = named(what);
  const wants = to - from === 1 ? anOrdinal(to) : `${inWords(to - from)} more`;
  if (from === 0)
    return `${name}: ${guest} needs ${to === 1 ? `a ${ordinal(1)} ${noun}` : `${inWords(to)} ${many(noun, to)}`}.`;
  const enough = `${inWords(from)} ${many(noun, from)} ${from === 1 ? 'is' : 'are'} enough`;
  const before = guests === 2 ? '1 guest' : `${guests - 1} guests`;
  return `${name}: at ${before} ${enough}; ${guest} needs ${wants}.`;
};

/** Whether a step adds to the hours of a line. */
const takes = ({ by }: CostLine, { attended, rings, oven }: Step): boolean => {
  const hours = 'hours' in by && by.hours;
  return hours === 'cooking' ? attended : hours === 'rings' ? rings > 0 : oven !== null;
};

const workWords = (
  { line, batches }: Extract<What, { of: 'work' }>,
  minutes: number,
  guest: string,
): string => {
  const time = `${minutes} ${minutes === 1 ? 'minute' : 'minutes'} more`;
  const taking = batches.filter(({ recipe }) => recipe.steps.some((step) => takes(line, step)));
  if (taking.length === 0) return `${line.name}: ${guest} takes ${time}.`;
  const begun = taking.map(({ recipe, to }) => `${anOrdinal(to)} batch of ${recipe.name}`);
  return `${line.name}: ${guest} begins ${listed(begun)}, ${time}.`;
};

/** The same in a few words, to stand at a curve: "fourth side, Salmon". */
export const jumpName = ({ what, to }: Jump): string => {
  if (what.of === 'guest') return `one more, ${what.group.name}`;
  if (what.of !== 'work') {
    const { name, noun } = named(what);
    return `${ordinal(to)} ${noun}, ${name}`;
  }
  const first = what.batches.find(({ recipe }) => recipe.steps.some((step) => takes(what.line, step)));
  return first ? `${ordinal(first.to)} batch, ${first.recipe.name}` : what.line.name;
};
