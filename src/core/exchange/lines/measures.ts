import { table } from './table.js';
import { isDash, isSign, type Token } from './tokens.js';
import { abbreviated, containers, counts, volumes, weights } from './unit-words.js';

/** A unit read at a place of the line: its name, the token after it, and what is in doubt about it. */
export type UnitRead = { unit: string; end: number; doubt?: string };

/** True for grams, ounces and the like; false for volumes and counts. */
export const isWeight = (unit: string | null): boolean => ['mg', 'g', 'kg', 'oz', 'lb'].includes(unit ?? '');

const measured = new Set([...weights.values(), ...volumes.values()]);
/** True for units of weight or volume. */
export const isMeasuredUnit = (unit: string | null): boolean => unit !== null && measured.has(unit);

/** True for spoons and cups, which no pack is sold by. */
export const isSpooned = (unit: string): boolean => ['tsp', 'dessertspoon', 'tbsp', 'cup'].includes(unit);

const holding = new Set(containers.values());
/** True for what may have a size of its own, such as a tin. */
export const isContainer = (unit: string | null): boolean => unit !== null && holding.has(unit);

/** Products in a container come as they are named: "chopped tomatoes" in a tin is what one buys. */
const shops = new Set(
  'tin jar bottle packet sachet envelope bag box carton container tub pot pouch tray tube'.split(' '),
);
export const isShopPack = (unit: string | null): boolean => unit !== null && shops.has(unit);

const lettersAlone = table<string>({ T: 'tbsp', t: 'tsp', Tb: 'tbsp' });

const spoons = table<string>({
  tea: 'tsp',
  table: 'tbsp',
  dessert: 'dessertspoon',
  desert: 'dessertspoon',
});

/** A weight or volume that starts at a token, with its full stop: "g", "fl. oz.", "T". */
export const measureAt = (tokens: readonly Token[], at: number): UnitRead | undefined => {
  const token = tokens[at];
  if (token?.kind !== 'word') return undefined;
  const letter = lettersAlone[token.text];
  if (letter) {
    const doubt =
      token.text === 'Tb'
        ? undefined
        : `${token.text} is read as a ${letter === 'tbsp' ? 'tablespoon' : 'teaspoon'}.`;
    return { unit: letter, end: afterStop(tokens, at + 1), ...(doubt && { doubt }) };
  }
  if (['fl', 'fluid'].includes(token.low)) {
    const next = afterStop(tokens, at + 1);
    const ounce = weights.get(tokens[next]?.low ?? '') === 'oz';
    return ounce ? { unit: 'fl-oz', end: afterStop(tokens, next + 1) } : undefined;
  }
  const spoon = ['spoon', 'spoons'].includes(tokens[at + 1]?.low ?? '') ? spoons[token.low] : undefined;
  if (spoon) return { unit: spoon, end: at + 2 };
  const unit = weights.get(token.low) ?? volumes.get(token.low);
  if (!unit) return undefined;
  return { unit, end: afterUnit(tokens, at) };
};

/** A container or a count that starts at a token: "tin", "cloves". */
export const countAt = (tokens: readonly Token[], at: number): UnitRead | undefined => {
  const token = tokens[at];
  if (token?.kind !== 'word') return undefined;
  const unit = containers.get(token.low) ?? counts.get(token.low);
  return unit ? { unit, end: afterUnit(tokens, at) } : undefined;
};

/** True when the word at a token names more than one: "cloves". */
export const isPlural = (token: Token | undefined): boolean => /[^s]s$/.test(token?.low ?? '');

/** Past a unit, and past its full stop when it is shortened: "pkgs.". */
const afterUnit = (tokens: readonly Token[], at: number): number => {
  const { low } = tokens[at]!;
  const short = abbreviated.has(low) || abbreviated.has(low.replace(/s$/, ''));
  return short ? afterStop(tokens, at + 1) : at + 1;
};

const afterStop = (tokens: readonly Token[], at: number): number => (isSign(tokens[at], '.') ? at + 1 : at);

/** A length that starts at a token: "cm", "-inch", '"'. Returns the token after it. */
export const lengthAt = (tokens: readonly Token[], at: number): number | undefined => {
  const start = isDash(tokens[at]) ? at + 1 : at;
  const token = tokens[start];
  if (isSign(token, '"', '”', '″')) return start + 1;
  const isLength = ['cm', 'mm', 'inch', 'inches', 'in', 'centimetre', 'centimetres'].includes(
    token?.low ?? '',
  );
  return isLength && token?.kind === 'word' ? afterStop(tokens, start + 1) : undefined;
};
