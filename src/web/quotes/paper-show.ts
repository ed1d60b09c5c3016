import type { NumberedPaper } from '../../core/facts/quote.js';
import { restOf } from '../../core/quotes-of-event.js';
import { read } from '../../store/documents.js';
import { numberedPapers, payments } from '../../store/payments.js';
import { type Format, formatFor } from '../format.js';
import type { Answerer } from '../house.js';
import { page } from '../page.js';
import { typedAmount } from '../typed.js';
import { paperAt, quotesAt } from './addresses.js';
import type { PaperRow } from './paper.js';
import { kinds, whyGone } from './paper-lines.js';
import { paperOf } from './papers.js';

export type NumberedPage = {
  kind: NumberedPaper['kind'];
  name: string;
  date: string;
  from: string;
  client: string;
  party: string;
  when: string;
  rows: PaperRow[];
  words: string;
  foot: string;
  gone: string;
  credit: string;
  /** The quotes of its event, while that is there. */
  back: string;
};

/** An invoice, a receipt or a credit as it was issued; it prints. */
export const showPaper: Answerer = async (request, reply) => {
  const paper = await paperOf(request);
  if (!paper) return reply.callNotFound();
  const { db } = request.server.house;
  const event = await read(db, 'event', paper.event);
  const all = await numberedPapers(db, [paper.event]);
  const gone = whyGone(paper, all, await payments(db, [paper.event]));
  const f = formatFor({ ...request.kitchen, currency: paper.currency });
  const name = `${kinds[paper.kind]} ${paper.number}`;
  return page(reply, 'quotes/numbered', {
    title: `${name}, ${paper.title}`,
    nav: 'Events',
    kind: paper.kind,
    name,
    date: f.shortDate(paper.date),
    from: paper.from,
    client: paper.client,
    party: paper.title,
    when: f.fullDate(paper.when),
    rows: rowsOf(paper, f),
    words: paper.words,
    foot: `${paper.from}, ${name.toLowerCase()} for ${paper.title}`,
    gone,
    credit: paper.kind === 'invoice' && gone === '' ? `${paperAt(paper)}/credit` : '',
    back: event ? quotesAt(paper.event).page : '',
  });
};

const rowsOf = (paper: NumberedPaper, f: Format): PaperRow[] => {
  const { kind, lines, tax, taxAmount, total, paid } = paper;
  const sign = kind === 'credit' ? -1 : 1;
  const rate = tax && `${tax.name} at ${typedAmount(tax.rate)}%`;
  const rows: PaperRow[] = lines.map(({ words, count, each, amount }) => ({
    amount: f.money(sign * amount),
    words:
      count === null || each === null || count === 1
        ? words
        : `${f.number(count)} ${words} at ${f.money(each)} each`,
  }));
  const within = rate && (tax.included || kind === 'receipt') && taxAmount > 0;
  if (rate && !within && taxAmount > 0) rows.push({ amount: f.money(sign * taxAmount), words: rate });
  const inIt = within ? `, with ${f.money(sign * taxAmount)} of ${rate} in it` : '';
  rows.push({ amount: f.money(sign * total), words: `${totals[kind]}${inIt}`, whole: true });
  if (kind === 'invoice' && paid > 0)
    rows.push(
      { amount: f.money(paid), words: 'paid by then, thank you' },
      { amount: f.money(restOf(paper)), words: 'still to be paid' },
    );
  return rows;
};

const totals = { invoice: 'in all', receipt: 'received, thank you', credit: 'taken back' } as const;
