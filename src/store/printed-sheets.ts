import { sql } from 'kysely';
import type { PrintedLine, PrintedSheet } from '../core/facts/printed-sheet.js';
import { forgetInPrint } from '../core/printed.js';
import { toTheSecond } from './prep-periods.js';
import type { Saving } from './rows.js';
import { saving } from './saves.js';
import type { Db, Trx } from './schema.js';

/** The last prints of each paper of these events, or of all, by event and sheet. */
export const prints = async (db: Db, events?: readonly string[]): Promise<PrintedSheet[]> => {
  const { rows } = await sql<Omit<PrintedSheet, 'at'> & { at: Date }>`
    select event, sheet, who, at, lines from printed_sheet
    where ${events === undefined} or event = any(${events ?? []})
    order by event collate "C", sheet collate "C"`.execute(db);
  return rows.map(({ at, ...print }) => ({ ...print, at: toTheSecond(at) }));
};

/** Keeps what a paper of an event says as it is printed, in place of its last print; an event that is gone has none. */
export const notePrint = (
  db: Db,
  { event, sheet, lines }: Pick<PrintedSheet, 'event' | 'sheet' | 'lines'>,
  { who, at }: Saving,
): Promise<void> =>
  saving(db, (trx) => insertPrints(trx, [{ event, sheet, who, at: toTheSecond(at), lines }]));

/** Adds prints as a workbook file holds them, each over an earlier one of the same paper. */
export const insertPrints = async (trx: Trx, all: readonly PrintedSheet[]): Promise<void> => {
  for (const { event, sheet, who, at, lines } of all)
    await sql`insert into printed_sheet (event, sheet, who, at, lines)
      select key, ${sheet}, ${who}, ${at}, ${JSON.stringify(lines.map(inOrder))}::jsonb from event where key = ${event}
      on conflict (event, sheet) do update set who = excluded.who, at = excluded.at, lines = excluded.lines`.execute(
      trx,
    );
};

const inOrder = ({ id, of, dish, fingerprint }: PrintedLine): PrintedLine => ({ id, of, dish, fingerprint });

/** Takes what papers of an event said of its guests out of their prints. */
export const forgetPrints = async (trx: Trx, event: string): Promise<void> => {
  await insertPrints(trx, (await prints(trx, [event])).map(forgetInPrint));
};
