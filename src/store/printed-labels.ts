import { sql } from 'kysely';
import type { PrintedLabel } from '../core/facts/printed-label.js';
import { toTheSecond } from './prep-periods.js';
import { saving } from './saves.js';
import type { Db, Trx } from './schema.js';

/** The last prints of the labels of these recipes, or of all, by recipe. */
export const printedLabels = async (db: Db, recipes?: readonly string[]): Promise<PrintedLabel[]> => {
  const { rows } = await sql<Omit<PrintedLabel, 'at'> & { at: Date }>`
    select recipe, who, at, made, use_by as "useBy", fingerprint from printed_label
    where ${recipes === undefined} or recipe = any(${recipes ?? []}) order by recipe collate "C"`.execute(db);
  return rows.map(({ at, ...label }) => ({ ...label, at: toTheSecond(at) }));
};

/** Keeps what the labels of a recipe say as they are printed, in place of their last print. */
export const notePrintedLabel = (db: Db, label: PrintedLabel): Promise<void> =>
  saving(db, (trx) => insertPrintedLabels(trx, [label]));

/** Adds prints of labels as a workbook file holds them; a recipe that is gone has none. */
export const insertPrintedLabels = async (trx: Trx, all: readonly PrintedLabel[]): Promise<void> => {
  for (const { recipe, who, at, made, useBy, fingerprint } of all)
    await sql`insert into printed_label (recipe, who, at, made, use_by, fingerprint)
      select key, ${who}, ${at}, ${made}, ${useBy}, ${fingerprint} from recipe where key = ${recipe}
      on conflict (recipe) do update set who = excluded.who, at = excluded.at, made = excluded.made,
        use_by = excluded.use_by, fingerprint = excluded.fingerprint`.execute(trx);
};
