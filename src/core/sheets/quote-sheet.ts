import type { Offer, Option, Quote } from '../facts/quote.js';
import { duesOf } from '../quoting/dues.js';
import { offerComes } from '../quoting/offer-comes.js';
import { quoteNow } from '../quoting/quote-now.js';
import { decimalMoney, type Sheet } from './sheet.js';

/** A quote as plain tables: what the client's paper says and how it stands today, money in the quote's own currency. */
export const quoteSheet = (quote: Quote, today: string): Sheet => {
  const { number, issued, answered, taken, offer } = quote;
  return {
    sheet: 'quote',
    title: `Quote ${number}, ${offer.title}`,
    about: {
      from: offer.from,
      party: offer.title,
      client: offer.client,
      date: offer.when,
      place: offer.place,
      serve: offer.serve,
      guests: String(offer.guests),
      currency: offer.currency,
      state: quoteNow(quote, today),
      issued: issued ?? '',
      answered: answered ?? '',
      taken: taken ?? '',
      'open until': offer.validUntil ?? '',
      'final count': offer.finalCount ?? '',
      tax: offer.tax ? `${offer.tax.name} ${offer.tax.rate} %` : '',
    },
    tables: [
      {
        name: 'menu',
        title: 'Menu',
        columns: columns('option', 'name', 'course', 'dish'),
        rows: offer.options.flatMap(menuRows),
      },
      {
        name: 'price',
        title: 'Price',
        columns: columns('option', 'words', 'count', 'each', 'amount'),
        rows: offer.options.flatMap((option) => priceRows(option, offer)),
      },
      {
        name: 'due',
        title: 'What is due',
        columns: columns('option', 'words', 'amount', 'date'),
        rows: offer.options.flatMap((option) => dueRows(option, quote)),
      },
      {
        name: 'terms',
        title: 'Terms',
        columns: columns('about', 'words'),
        rows: termRows(offer),
      },
    ],
    problems: [],
    foot: [],
  };
};

const columns = (...keys: string[]) => keys.map((key) => ({ key, label: key }));

type Row = Record<string, string>;

const menuRows = ({ key, name, menu }: Option): Row[] =>
  menu.flatMap(({ course, dishes }) =>
    (dishes.length > 0 ? dishes : ['']).map((dish) => ({ option: key, name, course, dish })),
  );

/** The lines, then what is added, taken off and due as tax, then the total. */
const priceRows = (option: Option, offer: Offer): Row[] => {
  const money = (minor: number) => decimalMoney(minor, offer.currency);
  const comes = offerComes(option, offer);
  const row = (words: string, amount: number, count = '', each = ''): Row => ({
    option: option.key,
    words,
    count,
    each,
    amount: money(amount),
  });
  if (comes.lines.length === 0) return [];
  return [
    ...comes.lines.map(({ words, count, each, amount }) => row(words, amount, String(count), money(each))),
    ...(comes.minimum > 0 ? [row('to the least it comes to', comes.minimum)] : []),
    ...(comes.discount > 0 ? [row(option.discountFor || 'taken off', -comes.discount)] : []),
    row('without tax', comes.net),
    row('tax', comes.tax),
    row('total', comes.total),
  ];
};

const dueRows = (option: Option, { offer, answered }: Quote): Row[] =>
  duesOf(offer, offerComes(option, offer).total, answered).map(({ words, amount, date }) => ({
    option: option.key,
    words,
    amount: decimalMoney(amount, offer.currency),
    date: date ?? 'on acceptance',
  }));

const termRows = ({ terms }: Offer): Row[] =>
  [
    { about: 'included', words: terms.included },
    { about: 'guest numbers', words: terms.guestNumbers },
    { about: 'fewer guests at the same price', words: terms.fewerPercent ? `${terms.fewerPercent} %` : '' },
    { about: 'allergies', words: terms.allergies },
    ...terms.cancellation.map(({ days, percent }) => ({
      about: `called off from ${days} days before`,
      words: `${percent} %`,
    })),
    { about: 'also', words: terms.more },
  ].filter(({ words }) => words !== '');
