import type { Offer, Option, Payment, Quote } from '../../core/facts/quote.js';
import { duesOf } from '../../core/quoting/dues.js';
import { type OfferTotal, offerComes } from '../../core/quoting/offer-comes.js';
import { optionTaken } from '../../core/quoting/papers.js';
import type { Format } from '../format.js';
import { typedAmount } from '../typed.js';
import { dueRows } from './dues.js';
import { type TermRow, termRows } from './terms.js';

export type PaperRow = { amount: string; words: string; whole?: boolean };

/** A menu at its price, as the client reads it. */
export type PaperOption = { name: string; menu: Option['menu']; rows: PaperRow[] };

/** A quote as the client has it; all of it comes from what is stored with the quote. */
export type QuotePaper = {
  number: string;
  date: string;
  from: string;
  title: string;
  about: string[];
  options: PaperOption[];
  terms: TermRow[];
  client: string;
  foot: string;
  /** true when it says so much that it is set closer, to stay on one sheet. */
  dense: boolean;
};

/** Lines that fit a sheet when they are set wide. */
const roomy = { A4: 25.5, Letter: 22 };

/** About how many lines it takes on paper. */
const linesOn = (options: readonly PaperOption[], terms: readonly TermRow[]): number => {
  const menus = options.flatMap(({ menu }) => menu.map(({ dishes }) => Math.max(1, dishes.length) + 0.6));
  const rows = options.flatMap((option) => option.rows.map(() => 1.5));
  const said = terms.map(({ words }) => Math.ceil(words.length / 68) * 0.8 + 0.4);
  return [...menus, ...rows, ...said].reduce((all, lines) => all + lines, 0);
};

type Around = { payments: readonly Payment[]; today: string; on: 'A4' | 'Letter' };

/** A quote as it stands on a sheet of paper, of either size. */
export const quotePaper = (quote: Quote, f: Format, { payments, today, on }: Around): QuotePaper => {
  const { offer, number, issued, state } = quote;
  const options = state === 'accepted' ? [optionTaken(quote)] : offer.options;
  const shown = options.map((option) => ({
    name: offer.options.length > 1 ? option.name : '',
    menu: option.menu,
    rows: rowsOf(option, quote, payments, f, today),
  }));
  const terms = termRows(offer, options, f);
  return {
    number: `Quote ${number}`,
    date: issued === null ? 'draft, not issued' : f.shortDate(issued),
    from: offer.from,
    title: offer.title,
    about: aboutOf(offer, f),
    options: shown,
    terms,
    client: offer.client ? `for ${offer.client}, date` : 'for the client, date',
    foot: `${offer.from}, ${issued === null ? 'draft of ' : ''}quote ${number} for ${offer.title}`,
    dense: linesOn(shown, terms) > roomy[on],
  };
};

const aboutOf = ({ client, when, place, serve, guests }: Offer, f: Format): string[] => {
  const forWhom = [client && `for ${client}`, f.fullDate(when)].filter(Boolean).join(', ');
  const served = [serve, `for ${f.count(guests, 'guest')}`].filter(Boolean).join(' ');
  return [forWhom, [place, served].filter(Boolean).join(', ')];
};

const rowsOf = (
  option: Option,
  quote: Quote,
  payments: readonly Payment[],
  f: Format,
  today: string,
): PaperRow[] => {
  const { offer } = quote;
  const comes = offerComes(option, offer);
  if (comes.lines.length === 0) return [];
  const dues = duesOf(offer, comes.total, quote.answered);
  return [...priceRows(option, comes, offer, f), ...dueRows(dues, comes.total, quote, payments, f, today)];
};

/** The price: in one row where one line is all of it, else its lines and then what they come to. */
const priceRows = (option: Option, comes: OfferTotal, { tax, guests }: Offer, f: Format): PaperRow[] => {
  const lines = comes.lines.map(({ amount, count, each, words }) => ({
    amount: f.money(amount),
    words: count === 1 ? words : `${f.number(count)} ${words} at ${f.money(each)} each`,
  }));
  const rate = tax && `${tax.name} at ${typedAmount(tax.rate)}%`;
  const rest: PaperRow[] = [];
  if (comes.minimum > 0)
    rest.push({ amount: f.money(comes.minimum), words: 'added to the least that a party comes to' });
  if (comes.discount > 0)
    rest.push({ amount: f.money(-comes.discount), words: option.discountFor || 'taken off' });
  if (rate && !tax.included && comes.tax > 0) rest.push({ amount: f.money(comes.tax), words: rate });
  const withTax = rate && tax.included ? `, with ${f.money(comes.tax)} of ${rate} in it` : '';
  const [first] = lines;
  if (lines.length === 1 && rest.length === 0 && first)
    return [{ amount: f.money(comes.total), words: `${first.words}${withTax}`, whole: true }];
  const inAll = `in all for ${f.count(guests, 'guest')}${withTax}`;
  return [...lines, ...rest, { amount: f.money(comes.total), words: inAll, whole: true }];
};
