import { sql } from 'kysely';
import type { EntityName, EntityOf, Workbook } from '../core/facts/facts.js';
import { writeBackup } from './backups.js';
import { load } from './documents.js';
import { entityNames, shapeOf } from './entities/index.js';
import { consistently } from './facts.js';
import { insertPhotographs, photographs } from './label-photographs.js';
import { insertNumberedPapers, insertPayments, numberedPapers, payments } from './payments.js';
import { insertPeriods, periods } from './prep-periods.js';
import { insertPrintedLabels, printedLabels } from './printed-labels.js';
import { insertPrints, prints } from './printed-sheets.js';
import { insertQuotes, quotes } from './quotes.js';
import { insertDocuments, type Saving } from './rows.js';
import { saving } from './saves.js';
import type { Db, Trx } from './schema.js';
import { withServed } from './served.js';

/** The whole kitchen as it stands at one moment; undefined while there is none. */
export const exportWorkbook = (db: Db): Promise<Workbook | undefined> => consistently(db, wholeKitchen);

/** The same within a transaction. */
export const wholeKitchen = async (trx: Db): Promise<Workbook | undefined> => {
  const [kitchen] = await docs(trx, 'kitchen');
  if (!kitchen) return undefined;
  return {
    format: 'catering-workbook',
    version: 1,
    kitchen,
    places: await docs(trx, 'place'),
    ingredients: await docs(trx, 'ingredient'),
    recipes: await docs(trx, 'recipe'),
    events: await docs(trx, 'event'),
    labelPhotographs: await photographs(trx),
    prepPeriods: await periods(trx),
    printedSheets: await prints(trx),
    printedLabels: await printedLabels(trx),
    quotes: (await quotes(trx)).map(({ doc }) => doc),
    payments: await payments(trx),
    numberedPapers: await numberedPapers(trx),
  };
};

const docs = async <N extends EntityName>(trx: Db, entity: N): Promise<EntityOf[N][]> =>
  (await load(trx, entity)).map(({ doc }) => doc);

/**
 * Writes the whole kitchen into a backup file and returns its path; undefined while there is no kitchen. Nothing is
 * saved meanwhile, so that a backup never holds what was forgotten by the time it is there.
 */
export const backUp = (db: Db, dataDir: string, at: Date): Promise<string | undefined> =>
  saving(db, async (trx) => {
    const workbook = await wholeKitchen(trx);
    return workbook && writeBackup(workbook, dataDir, at);
  });

/**
 * Puts a parsed workbook in the place of the kitchen, all or nothing, after a backup of what was there; returns the
 * backup's path. The history of what was replaced goes with it; accounts and sessions stay. Revisions go on above
 * all earlier ones, so that a form opened before is seen as old.
 */
export const importWorkbook = (
  db: Db,
  workbook: Workbook,
  { dataDir, ...by }: Saving & { dataDir: string },
): Promise<string | undefined> =>
  saving(db, async (trx) => {
    const there = await wholeKitchen(trx);
    const backup = there && writeBackup(there, dataDir, by.at);
    const revision = (await lastRevision(trx)) + 1;
    await emptyKitchen(trx);
    await insertKitchen(trx, workbook, revision, by);
    await sql`analyze`.execute(trx);
    return backup;
  });

const insertKitchen = async (trx: Trx, workbook: Workbook, revision: number, by: Saving): Promise<void> => {
  const { kitchen, places, ingredients, recipes, events } = workbook;
  const at = <D>(docs: readonly D[]) => docs.map((doc) => ({ doc, revision }));
  await insertDocuments(trx, 'kitchen', at([kitchen]), by);
  await insertDocuments(trx, 'place', at(places), by);
  await insertDocuments(trx, 'ingredient', at(ingredients), by);
  await insertPhotographs(trx, workbook.labelPhotographs);
  await insertDocuments(trx, 'recipe', at(recipes), by);
  // A done event written by hand without what was served keeps it from now on.
  const kept: EntityOf['event'][] = [];
  for (const event of events) kept.push(await withServed(trx, undefined, event, by));
  await insertDocuments(trx, 'event', at(kept), by);
  await insertPeriods(trx, workbook.prepPeriods);
  await insertPrints(trx, workbook.printedSheets);
  await insertPrintedLabels(trx, workbook.printedLabels);
  await insertQuotes(trx, workbook.quotes, revision, by);
  await insertPayments(trx, workbook.payments, by);
  await insertNumberedPapers(trx, workbook.numberedPapers);
};

const lastRevision = async (trx: Trx): Promise<number> => {
  const tables = [...entityNames, 'change'].map((table) => sql`select revision from ${sql.table(table)}`);
  const { rows } = await sql<{ last: number | null }>`
    select max(revision) as last from (${sql.join(tables, sql` union all `)}) as all_of_them`.execute(trx);
  return rows[0]?.last ?? 0;
};

const emptyKitchen = async (trx: Trx): Promise<void> => {
  await trx.deleteFrom('prep_period').execute();
  await sql`delete from numbered_paper`.execute(trx);
  for (const entity of entityNames.toReversed())
    for (const table of [
      ...shapeOf(entity)
        .parts.map((part) => part.table)
        .toReversed(),
      entity,
    ])
      await sql`delete from ${sql.table(table)}`.execute(trx);
  await trx.deleteFrom('change').execute();
};
