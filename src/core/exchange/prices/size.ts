import type { Measure } from '../../facts/common.js';
import { amount } from '../../facts/common.js';
import type { PriceList } from '../../facts/price-list.js';
import { readAmount } from '../../quantity/amount.js';
import { Rational } from '../../quantity/rational.js';
import { countUnits, measuredUnits, readUnit } from '../../quantity/units.js';
import type { Read } from '../../reading.js';
import { cited, listFigure } from './figure.js';

const refuse = (sentence: string) => ({ sentence });

/** Units as suppliers shorten them, and the codes of UNECE Recommendation 20. */
const shortened: Record<string, string> = {
  ea: 'each',
  pc: 'each',
  pcs: 'each',
  pce: 'each',
  pces: 'each',
  st: 'each',
  stk: 'each',
  ct: 'each',
  count: 'each',
  unit: 'each',
  units: 'each',
  h87: 'each',
  c62: 'each',
  "'s": 'each',
  s: 'each',
  doz: 'dozen',
  dz: 'dozen',
  dzn: 'dozen',
  kgm: 'kg',
  kilogramme: 'kg',
  kilogrammes: 'kg',
  grm: 'g',
  gms: 'g',
  gm: 'g',
  lt: 'l',
  lts: 'l',
  ltrs: 'l',
  lit: 'l',
  mlt: 'ml',
  clt: 'cl',
  lbr: 'lb',
  onz: 'oz',
};

const known = new Set<string>(
  [...measuredUnits, ...countUnits].filter((unit) => unit !== 'pinch' && unit !== 'batch'),
);

/** The unit a supplier's word means; undefined for a box or a sack, which says nothing of what is in it. */
export const listUnit = (word: string): string | undefined => {
  const plain = word.trim().toLowerCase().replace(/\.$/, '');
  const unit = shortened[plain] ?? (plain === '' ? undefined : readUnit(plain));
  return unit !== undefined && known.has(unit) ? unit : undefined;
};

const figure = String.raw`\d(?:[\d.,]|['’](?=\d))*(?:\s\d{3}(?!\d))*(?:\s?\/\s?\d+)?|[½¼¾⅓⅔]`;
const times = new RegExp(String.raw`^(${figure})\s*[x×*]\s*(?=\d)`, 'iu');
const packOf = /^(?:case|box|pack|tray|bag|net|punnet|carton)s?(?:\s+of)?\s+(?=\d)/i;
const amountThenUnit = new RegExp(String.raw`^(${figure})\s*[-/]?\s*([\p{L}']*\.?(?:\s?oz)?)(.*)$`, 'iu');

/**
 * What a pack holds as a supplier writes it: "2.5 kg", "6 x 400g", "12 x 75cl", "per kg", "case of 12". What is in a
 * pack counts together: six tins of 400 g are 2.4 kg.
 */
export const listSize = (text: string, decimal: PriceList['decimal']): Read<Measure> => {
  let rest = text.trim().replace(/^per\s+/i, '');
  if (rest === '') return refuse('There is no pack size.');
  const holds = packOf.test(rest);
  rest = rest.replace(packOf, '');
  let value = Rational.one;
  for (let found = times.exec(rest); found; found = times.exec(rest)) {
    const by = exactly(found[1]!, decimal);
    if (!by) return unread(text);
    value = value.times(by);
    rest = rest.slice(found[0].length);
  }
  const found = amountThenUnit.exec(rest);
  if (!found) {
    const unit = listUnit(rest);
    return unit ? { value: { amount: '1', unit } } : unread(text);
  }
  // A second figure makes it two sizes, or none that is sure.
  if (/\d/.test(found[3]!)) return unread(text);
  const each = exactly(found[1]!, decimal);
  const word = found[2]!.replace(/\s?oz$/i, (oz) => (found[2]!.length > oz.length ? ' oz' : oz.trim()));
  const unit =
    listUnit(word) ??
    (/^(?:pk|pack|packs|per|in|$)/i.test(word) && (holds || word !== '') ? 'each' : undefined);
  if (!each || !unit)
    return word === '' ? refuse(`The pack size ${cited(text)} says no unit.`) : unread(text);
  return sized(value.times(each), unit, text);
};

/** A pack of so many of an amount, where a list gives them in columns of their own. */
export const manyOf = (size: Measure, count: string, decimal: PriceList['decimal']): Read<Measure> => {
  const by = exactly(count, decimal);
  if (!by || by.isZero) return refuse(`How many are in a pack, ${cited(count)}, is not a figure.`);
  return sized(by.times(Rational.parse(size.amount)), size.unit, count);
};

const exactly = (text: string, decimal: PriceList['decimal']): Rational | undefined => {
  const plain = text.trim();
  const read = /[/½¼¾⅓⅔]/.test(plain) ? readAmount(plain) : undefined;
  const found = read ? ('amount' in read ? read.amount : undefined) : listFigure(plain, decimal);
  return found === undefined ? undefined : Rational.parse(found);
};

const thousand = Rational.of(1000);
const larger: Record<string, string> = { g: 'kg', ml: 'l' };

const sized = (total: Rational, given: string, text: string): Read<Measure> => {
  const many = larger[given] !== undefined && total.compare(thousand) >= 0;
  const [value, unit] = many ? [total.over(thousand), larger[given]!] : [total, given];
  const held = value.toString();
  if (value.isZero) return refuse(`The pack size ${cited(text)} is nothing.`);
  return amount.safeParse(held).success ? { value: { amount: held, unit } } : unread(text);
};

const unread = (text: string) =>
  refuse(`The pack size ${cited(text)} can’t be read. Such as 2.5 kg, 6 x 400 g or 12 each can.`);

const inName = /(?:\d+\s*[x×*]\s*)*\d[\d.,]*\s?(?:kg|g|ml|cl|ltr|lt|litres?|l|lb|oz)\b(?!.*\d)/iu;

/** The pack size that stands in a name, as in "Butter unsalted 40 x 250g"; undefined when there is none. */
export const sizeInName = (name: string, decimal: PriceList['decimal']): Measure | undefined => {
  const found = inName.exec(name)?.[0];
  const read = found === undefined ? undefined : listSize(found, decimal);
  return read && 'value' in read ? read.value : undefined;
};
