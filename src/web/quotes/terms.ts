import type { Offer, Option } from '../../core/facts/quote.js';
import { leastGuests } from '../../core/quoting/owed.js';
import type { Format } from '../format.js';
import { typedAmount } from '../typed.js';

export type TermRow = { label: string; words: string };

/** What an offer says beside its menu and price, each with its label; what is empty is left out. */
export const termRows = (offer: Offer, options: readonly Option[], f: Format): TermRow[] =>
  [
    { label: 'Included', words: offer.terms.included },
    { label: 'Guest numbers', words: guestNumbers(offer, options, f) },
    { label: 'Allergies', words: offer.terms.allergies },
    { label: 'Calling off', words: callingOff(offer, f) },
    { label: 'Also', words: offer.terms.more },
    { label: 'Valid', words: valid(offer, f) },
  ].filter(({ words }) => words !== '');

const joined = (sentences: readonly (string | false | null | undefined)[]): string =>
  sentences.filter(Boolean).join(' ');

const guestNumbers = (offer: Offer, options: readonly Option[], f: Format): string => {
  const { finalCount, terms, guests } = offer;
  const least = leastGuests(offer);
  return joined([
    finalCount && `Final number by ${f.fullDate(finalCount)}.`,
    least !== undefined &&
      least < guests &&
      `From ${f.number(least)} to ${f.count(guests, 'guest')} the price a guest stays as it is.`,
    ...options.map((option) => tiersInWords(option, options.length > 1, f)),
    terms.guestNumbers,
  ]);
};

const tiersInWords = ({ name, tiers }: Option, named: boolean, f: Format): string => {
  if (tiers.length === 0) return '';
  const steps = tiers.map(({ from, each }) => `from ${f.count(from, 'guest')} ${f.money(each)}`);
  return `${named ? `${name}, a guest: ` : 'A guest costs '}${f.list(steps)}.`;
};

const callingOff = ({ terms: { cancellation } }: Offer, f: Format): string => {
  const steps = [...cancellation]
    .sort((a, b) => b.days - a.days)
    .map(({ days, percent }) => `from ${daysBefore(days, f)} ${typedAmount(percent)}%`);
  return steps.length === 0 ? '' : `If the party is called off, part of the total is owed: ${f.list(steps)}.`;
};

const daysBefore = (days: number, f: Format): string =>
  days === 0 ? 'the day itself' : `${f.count(days, 'day')} before it`;

const valid = ({ validUntil, tax }: Offer, f: Format): string => {
  const until = validUntil ? `Open for acceptance until ${f.wholeDate(validUntil)}. ` : '';
  const taxed = tax
    ? `${tax.name} at ${typedAmount(tax.rate)}% is ${tax.included ? 'in them' : 'added'}`
    : 'no tax is charged';
  return `${until}Prices in ${f.currencyName()}; ${taxed}.`;
};
