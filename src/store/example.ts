import { sql } from 'kysely';
import example from '../../shared/example/kitchen.json' with { type: 'json' };
import { workbook } from '../core/facts/facts.js';
import { load } from './documents.js';
import { takeOut } from './removal.js';
import type { Saving } from './rows.js';
import { saving } from './saves.js';
import type { Db, Trx } from './schema.js';
import type { Use } from './uses.js';
import { importWorkbook } from './workbook.js';

/** Puts the worked example kitchen in place of the kitchen; returns the backup's path when there was one. */
export const openExample = (db: Db, by: Saving & { dataDir: string }): Promise<string | undefined> =>
  importWorkbook(db, workbook.parse(example), by);

/** What of the example stayed, and what uses it: nothing for the home kitchen, which there must be. */
export type Stayed = {
  entity: 'place' | 'ingredient' | 'recipe' | 'event';
  key: string;
  name: string;
  uses: Use[];
};

/** Removes what came with the example and was neither changed nor is used by anything that stays. */
export const removeExample = (db: Db, by: Saving): Promise<{ removed: number; stayed: Stayed[] }> =>
  saving(db, async (trx) => {
    let removed = 0;
    for (;;) {
      const { gone, stayed } = await oneRound(trx, by);
      removed += gone;
      // What is gone may have been the last to use something else.
      if (gone === 0) return { removed, stayed };
    }
  });

const oneRound = async (trx: Trx, by: Saving): Promise<{ gone: number; stayed: Stayed[] }> => {
  const stayed: Stayed[] = [];
  let gone = 0;
  for (const entity of ['event', 'recipe', 'ingredient', 'place'] as const)
    for (const stored of await load(trx, entity)) {
      if (stored.doc.origin !== 'example') continue;
      const removal = await takeOut(trx, entity, stored, by);
      if (removal.outcome === 'removed') gone += 1;
      else
        stayed.push({
          entity,
          key: stored.key,
          name: stored.doc.name,
          uses: 'uses' in removal ? removal.uses : [],
        });
    }
  return { gone, stayed };
};

/** How many documents still stand as the example brought them. */
export const exampleCount = async (db: Db): Promise<number> => {
  const tables = (['event', 'recipe', 'ingredient', 'place'] as const).map(
    (entity) => sql`select 1 from ${sql.table(entity)} where origin = 'example'`,
  );
  const { rows } = await sql<{ n: number }>`
    select count(*) as n from (${sql.join(tables, sql` union all `)}) as rows`.execute(db);
  return rows[0]?.n ?? 0;
};
