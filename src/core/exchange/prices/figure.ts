import type { PriceList } from '../../facts/price-list.js';
import { minorDigits } from '../../money.js';
import { Rational } from '../../quantity/rational.js';
import type { Read } from '../../reading.js';

const refuse = (sentence: string) => ({ sentence });

/** Cuts what stands in a cell to a length that fits into a sentence. */
export const cited = (text: string): string => {
  const plain = text.trim().replace(/\s+/g, ' ');
  return `“${plain.length > 40 ? `${plain.slice(0, 40)}…` : plain}”`;
};

const spaceBetween = /(?<=\d)[\s'’](?=\d{3}(?!\d))/gu;
const shapes = {
  point: /^(?:\d{1,12}|\d{1,3}(?:,\d{3})+)?(?:\.\d+)?$/,
  comma: /^(?:\d{1,12}|\d{1,3}(?:\.\d{3})+)?(?:,\d+)?$/,
};

/**
 * A figure as one list writes it, as exact text; undefined when it is none. With a decimal point "1,234" is one
 * thousand two hundred and thirty-four, with a decimal comma one and a bit: the list says which, no cell is guessed at.
 */
export const listFigure = (text: string, decimal: PriceList['decimal']): string | undefined => {
  const plain = text.trim().replace(spaceBetween, '');
  if (!/\d/.test(plain) || !shapes[decimal].test(plain)) return undefined;
  const dotted =
    decimal === 'point' ? plain.replaceAll(',', '') : plain.replaceAll('.', '').replace(',', '.');
  return /^\.?\d{1,12}(\.\d{1,9})?$/.test(dotted)
    ? Rational.parse(dotted.replace(/^\./, '0.')).toString()
    : undefined;
};

const signs: Record<string, string> = { '£': 'GBP', '€': 'EUR', '₹': 'INR', '₩': 'KRW', '₺': 'TRY' };
const noPrice = /^(?:poa|p\.o\.a\.?|n\/?a|tbc|tba|call|ask|market|market price|[-–—.]+)$/i;

/** What one cell asks for a pack, in minor units of the kitchen's currency; no price, 0 or below is refused. */
export const listPrice = (
  text: string,
  { decimal, currency }: { decimal: PriceList['decimal']; currency: string },
): Read<number> => {
  const plain = text.trim();
  if (plain === '') return refuse('There is no price.');
  if (noPrice.test(plain)) return refuse(`There is no price, only ${cited(plain)}.`);
  const sign = Object.keys(signs).find((one) => plain.includes(one));
  const said = (sign && signs[sign]) ?? /\b[A-Z]{3}\b/.exec(plain)?.[0];
  if (said && said !== currency)
    return refuse(`The price ${cited(plain)} is in ${said}, and this kitchen’s prices are in ${currency}.`);
  const bare = plain.replace(/^(?:[A-Z]{3}|\p{Sc}|\s)+|(?:[A-Z]{3}|\p{Sc}|\s)+$/gu, '');
  if (/^[-−–(]\s*[\d.,\p{Sc}]/u.test(bare)) return refuse(`The price ${cited(plain)} is below zero.`);
  const figure = listFigure(bare, decimal);
  if (figure === undefined) return refuse(notAFigure(plain, bare, decimal));
  const digits = minorDigits(currency);
  const minor = Rational.parse(figure).times(Rational.of(10n ** BigInt(digits)));
  if (minor.isZero) return refuse('The price is 0: nothing is free.');
  if (!minor.isWhole)
    return refuse(`${currency} has ${digits} figures after the ${decimal}, and ${cited(plain)} has more.`);
  if (minor.compare(Rational.of(1_000_000_000_000)) > 0)
    return refuse(`A price of ${cited(plain)} is more than the workbook holds.`);
  return { value: Number(minor.n) };
};

const notAFigure = (plain: string, bare: string, decimal: PriceList['decimal']): string => {
  const other = decimal === 'point' ? 'comma' : 'point';
  return listFigure(bare, other) === undefined
    ? `The price ${cited(plain)} is not a figure.`
    : `The price ${cited(plain)} has a ${other} before its pennies, and this list a ${decimal}.`;
};
