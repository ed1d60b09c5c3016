import { dayInWords } from '../calendar.js';
import type { NumberedPaper, Offer, Option, Payment, Quote } from '../facts/quote.js';
import { toMinor } from '../money.js';
import { Rational } from '../quantity/rational.js';
import { accountOf, duesOf, paidOf } from './dues.js';
import { type OfferTotal, offerComes } from './offer-comes.js';

/** The number and day of a paper; the number is the next of its kind. */
export type Numbered = { number: number; date: string };

/** The option a client took; the first while none is taken. */
export const optionTaken = ({ offer, taken }: Quote): Option =>
  offer.options.find(({ key }) => key === taken) ?? offer.options[0]!;

/** An invoice of an accepted quote, worked out from the quote alone: what it comes to, and what was paid by that day. */
export const invoiceOf = (quote: Quote, payments: readonly Payment[], as: Numbered): NumberedPaper => {
  const option = optionTaken(quote);
  const comes = offerComes(option, quote.offer);
  const paid = payments.filter(({ date }) => date <= as.date);
  return {
    ...headOf(quote),
    ...as,
    kind: 'invoice',
    of: null,
    payment: null,
    lines: linesOf(option, comes),
    taxAmount: comes.tax,
    total: comes.total,
    paid: Math.max(0, paidOf(paid)),
    words: restInWords(quote, comes.total, paid, as.date),
  };
};

const headOf = ({ event, offer }: { event: string; offer: Offer }) => ({
  event,
  from: offer.from,
  client: offer.client,
  title: offer.title,
  when: offer.when,
  tax: offer.tax,
  currency: offer.currency,
});

const sumLine = (words: string, amount: number) => ({ words, count: null, each: null, amount });

/** As prices are named; they add up to the total, or to the net where tax is added to prices. */
const linesOf = (option: Option, { lines, minimum, discount }: OfferTotal): NumberedPaper['lines'] => [
  ...lines,
  ...(minimum ? [sumLine('to the least that a party comes to', minimum)] : []),
  ...(discount ? [sumLine(option.discountFor || 'discount', -discount)] : []),
];

const restInWords = (quote: Quote, total: number, payments: readonly Payment[], day: string): string => {
  const { owed, dues } = accountOf(total, duesOf(quote.offer, total, quote.answered), payments, day);
  if (owed <= 0) return 'Paid in full.';
  const open = dues.filter((due) => due.open > 0);
  const words = open.map((due) => `${due.words} by ${dayInWords(due.date ?? day)}`).join('; ');
  return `Still to be paid: ${words}.`.slice(0, 1000);
};

/**
 * A receipt of one payment of an accepted quote. `payments` are all of the event: the tax in it is what the payments so
 * far hold less what those before it did, so that the receipts of a whole total hold its whole tax.
 */
export const receiptOf = (
  quote: Quote,
  payment: Payment,
  payments: readonly Payment[],
  as: Numbered,
): NumberedPaper => {
  const { tax, total } = offerComes(optionTaken(quote), quote.offer);
  const before = paidOf(
    payments.slice(
      0,
      payments.findIndex(({ key }) => key === payment.key),
    ),
  );
  const taxIn = (paid: number) =>
    total > 0 ? toMinor(Rational.of(Math.min(total, Math.max(0, paid))).times(Rational.of(tax, total))) : 0;
  return {
    ...headOf(quote),
    ...as,
    kind: 'receipt',
    of: null,
    payment: payment.key,
    lines: [sumLine(payment.words || 'received, thank you', payment.amount)],
    taxAmount: taxIn(before + payment.amount) - taxIn(before),
    total: payment.amount,
    paid: payment.amount,
    words: `Received on ${dayInWords(payment.date)}.`,
  };
};

/** A credit that takes a whole invoice back: its lines, tax and total are those taken back. */
export const creditOf = (invoice: NumberedPaper, as: Numbered): NumberedPaper => ({
  ...invoice,
  ...as,
  kind: 'credit',
  of: invoice.number,
  payment: null,
  paid: 0,
  words: `Takes back invoice ${invoice.number} of ${dayInWords(invoice.date)}.`,
});
