import { type NumberedPaper, numberedPaper, offer } from '../../src/core/facts/quote.js';
import { issue } from '../../src/store/quote-answers.js';
import { draftQuote } from '../../src/store/quote-drafts.js';
import type { StoredQuote } from '../../src/store/quotes.js';
import type { Db } from '../../src/store/schema.js';
import { by } from './world.js';

export const today = '2026-11-20';

/** Forty guests at twenty pounds. */
export const fortyAtTwenty = offer.parse({
  title: 'Party in the barn',
  client: 'A. Winter',
  when: '2026-11-28',
  guests: 40,
  options: [
    {
      key: 'o1',
      menu: [{ course: 'Main', dishes: ['Leek tart'] }],
      lines: [{ words: 'guests', count: 40, each: 2000 }],
    },
  ],
  terms: {},
  dues: [
    { words: 'deposit, one quarter', percent: '25', date: null },
    { words: 'balance', percent: null, date: '2026-11-26' },
  ],
  validUntil: '2026-11-25',
  currency: 'GBP',
  from: 'Mill Lane',
});

export const drafted = (db: Db, after = 0): Promise<StoredQuote> =>
  draftQuote(db, 'party', { ...by, offer: fortyAtTwenty, after });

export const issued = async (db: Db, after = 0): Promise<StoredQuote> => {
  const { doc, revision } = await drafted(db, after);
  const done = await issue(db, doc.key, { ...by, today, revision });
  if (done.outcome !== 'saved') throw new Error(JSON.stringify(done));
  return done.quote;
};

export const invoice = (number: number): NumberedPaper =>
  numberedPaper.parse({
    kind: 'invoice',
    number,
    date: today,
    event: 'party',
    from: 'Mill Lane',
    client: 'A. Winter',
    title: 'Party in the barn',
    when: '2026-11-28',
    lines: [{ words: 'guests', count: 40, each: 2000, amount: 80_000 }],
    tax: null,
    taxAmount: 0,
    total: 80_000,
    paid: 0,
    currency: 'GBP',
  });
