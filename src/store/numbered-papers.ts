import { sql } from 'kysely';
import type { NumberedPaper, Payment } from '../core/facts/quote.js';
import { insertNumberedPapers, numberedPapers, payments } from './payments.js';
import { quotes, type StoredQuote } from './quotes.js';
import { saving } from './saves.js';
import type { Db, Trx } from './schema.js';

/** What a paper is made of, read in the very save that numbers it. */
export type PaperGround = {
  number: number;
  quotes: StoredQuote[];
  payments: Payment[];
  /** Papers of the event that stand already. */
  papers: NumberedPaper[];
};

/** A paper to be issued; one that stands already and is the answer; or why there is none. */
export type PaperMade = { paper: NumberedPaper } | { there: NumberedPaper } | { sentence: string };

/**
 * Issues a paper under the next number of its kind, counted over the whole kitchen. The number is taken in the save
 * that writes the paper, and saves wait for each other: none is skipped and none stands twice.
 */
export const issuePaper = (
  db: Db,
  kind: NumberedPaper['kind'],
  event: string,
  make: (ground: PaperGround) => PaperMade,
): Promise<PaperMade> =>
  saving(db, async (trx) => {
    const made = make({
      number: await nextOf(trx, kind),
      quotes: await quotes(trx, [event]),
      payments: await payments(trx, [event]),
      papers: await numberedPapers(trx, [event]),
    });
    if ('paper' in made) await insertNumberedPapers(trx, [made.paper]);
    return made;
  });

const nextOf = async (trx: Trx, kind: string): Promise<number> => {
  const { rows } = await sql<{ next: number }>`
    select coalesce(max(number), 0) + 1 as next from numbered_paper where kind = ${kind}`.execute(trx);
  return rows[0]!.next;
};

/** One numbered paper; undefined when there is none. */
export const readPaper = async (
  db: Db,
  kind: NumberedPaper['kind'],
  number: number,
): Promise<NumberedPaper | undefined> => {
  const { rows } = await sql<{ event: string }>`
    select event from numbered_paper where kind = ${kind} and number = ${number}`.execute(db);
  const [row] = rows;
  const all = row ? await numberedPapers(db, [row.event]) : [];
  return all.find((paper) => paper.kind === kind && paper.number === number);
};
