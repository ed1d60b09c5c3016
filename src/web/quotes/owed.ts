import type { Event } from '../../core/facts/event.js';
import type { NumberedPaper, Payment, Quote } from '../../core/facts/quote.js';
import { counting } from '../../core/quotes-of-event.js';
import { accountOf, duesIfPostponed, duesOf } from '../../core/quoting/dues.js';
import { offerComes } from '../../core/quoting/offer-comes.js';
import { owedIfCancelled } from '../../core/quoting/owed.js';
import { optionTaken } from '../../core/quoting/papers.js';
import { type Format, formatFor } from '../format.js';
import { typedAmount } from '../typed.js';

/** What the accepted quote comes to, what was paid of it and what is due when. */
export type Owed = {
  number: number;
  total: string;
  paid: string;
  owed: string;
  /** true when more was paid than is owed. */
  over: boolean;
  dues: { amount: string; words: string; late: boolean }[];
  /** That another day moves what is due; empty while the party is on the day that was offered. */
  moved: string;
  /** That the invoice which stands is for another total; empty while it isn't, or none stands. */
  invoiced: string;
  /** What the terms say is owed when it is called off; empty when they say nothing. */
  calledOff: string;
};

export const owedOf = (
  quote: Quote,
  event: Event,
  all: readonly Payment[],
  { today, ways, invoice }: { today: string; ways: Format; invoice: NumberedPaper | undefined },
): Owed => {
  const { offer, number, answered } = quote;
  const f = formatFor({ ...ways.ways, currency: offer.currency });
  const { total } = offerComes(optionTaken(quote), offer);
  const isMoved = event.date !== offer.when;
  const due = isMoved ? duesIfPostponed(offer, total, answered, event.date) : duesOf(offer, total, answered);
  const account = accountOf(total, due, counting(all), today);
  return {
    number,
    total: f.money(total),
    paid: f.money(account.paid),
    owed: f.money(Math.abs(account.owed)),
    over: account.owed < 0,
    dues: account.dues.map(({ words, amount, open, date, late }) => ({
      amount: f.money(open),
      words:
        open === 0
          ? `${words} of ${f.money(amount)}, paid`
          : `${words}${open < amount ? ` of ${f.money(amount)}` : ''}, ${late ? 'was due' : 'due'} ${date === null ? 'on acceptance' : f.dateYear(date)}`,
      late,
    })),
    invoiced:
      invoice && invoice.total !== total
        ? `Invoice ${invoice.number} is for ${f.money(invoice.total)}, quote ${number} comes to ${f.money(total)}: take it back by a credit and issue another.`
        : '',
    moved: isMoved
      ? `The party moved from ${f.dateYear(offer.when)} to ${f.dateYear(event.date)}: what is due by a day moves as far.`
      : event.state === 'postponed'
        ? 'The party is put off: once it has another day, what is due by a day moves as far.'
        : '',
    calledOff: calledOff(quote, event, total, today, f),
  };
};

const calledOff = ({ offer }: Quote, event: Event, total: number, today: string, f: Format): string => {
  if (event.state === 'done' || today > event.date) return '';
  const { owed, step, next } = owedIfCancelled({ ...offer, when: event.date }, total, today);
  if (owed === undefined) return '';
  const share = step ? ` (${typedAmount(step.percent)}%)` : '';
  const later = next ? `, from ${f.dateYear(next.from)} ${typedAmount(next.step.percent)}%` : '';
  return `If it is called off today, ${f.money(owed)}${share} is owed${later}. What was paid counts towards that.`;
};
