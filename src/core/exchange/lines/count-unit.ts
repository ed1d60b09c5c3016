import { Rational } from '../../quantity/rational.js';
import { countAt, isPlural, isShopPack, type UnitRead } from './measures.js';
import { table } from './table.js';
import { isSign, isWord, type Token } from './tokens.js';
import { extents } from './words.js';

const isExtent = ({ low }: Token): boolean => extents.has(low) || /-sized?$/.test(low);

/** Past "large", "heaped", "thumb sized" before a unit. */
export const extentsEnd = (tokens: readonly Token[], start: number): number => {
  let at = start;
  for (;;) {
    if (tokens[at]?.kind === 'word' && isWord(tokens[at + 1], 'sized', 'size')) at += 2;
    else if (tokens[at] && isExtent(tokens[at]!)) at += isSign(tokens[at + 1], '.') ? 2 : 1;
    else break;
  }
  return at;
};

/** Words that are a unit only in the plural after more than one: "2 rib eye steaks" counts steaks. */
const namesInSingular = [
  'rib',
  'strip',
  'side',
  'square',
  'leaf',
  'blade',
  'stem',
  'bar',
  'ball',
  'pot',
  'log',
  'roll',
];
const namedTogether = table<string[]>({
  rib: ['eye', 'roast', 'steak', 'steaks'],
  pot: ['roast'],
  strip: ['steak', 'steaks', 'loin'],
  square: ['sausage'],
  stock: ['cube', 'cubes'],
  roll: ['mop', 'mops'],
});

/** Words of other things too: a unit only before "of". */
const onlyWithOf = new Set(['cake', 'nut', 'walnut', 'hazelnut', 'lump', 'curl', 'disc', 'net', 'shake']);

/** A count unit, unless the word is part of the food's name or there is no food after it. */
export const countUnit = (
  tokens: readonly Token[],
  at: number,
  quantity: Rational,
  behind = false,
): UnitRead | undefined => {
  const count = countAt(tokens, at);
  if (!count || behind) return count;
  const next = tokens[count.end];
  // "2 x 400 g tins" and no more: what they hold is not said.
  if (!next) return isShopPack(count.unit) ? count : undefined;
  if (next.kind === 'sign' && !isSign(next, '(')) return undefined;
  const token = tokens[at]!;
  if (onlyWithOf.has(count.unit))
    return isWord(next, 'of', 'yeast', 'compressed')
      ? { ...count, doubt: `How much a ${count.unit} is, the line does not say.` }
      : undefined;
  const several = quantity.compare(Rational.one) > 0;
  if (namedTogether[token.low]?.includes(next.low)) return undefined;
  if (several && !isPlural(token) && namesInSingular.includes(token.low) && !isWord(next, 'of'))
    return undefined;
  return count;
};
