import { createHash } from 'node:crypto';
import { type TablePlan, tablePlan } from '../core/exchange/csv/plan.js';
import type { Csv } from '../core/exchange/csv/read.js';
import type { EntityOf } from '../core/facts/facts.js';
import { dropDraft } from './csv-drafts.js';
import { consistently } from './facts.js';
import type { Saving } from './rows.js';
import { saving } from './saves.js';
import type { Db } from './schema.js';
import { putTogether, type SavedTogether, storedBy } from './together.js';
import { wholeKitchen } from './workbook.js';

type Planned = { plan: TablePlan; mark: string };

/** What a table of ours would change, and the mark of exactly that; or why it can't be read as one. */
export const planTable = (db: Db, csv: Csv): Promise<Planned | { sentence: string }> =>
  consistently(db, (trx) => planIn(trx, csv));

const planIn = async (trx: Db, csv: Csv): Promise<Planned | { sentence: string }> => {
  const kitchen = await wholeKitchen(trx);
  if (!kitchen) return { sentence: 'There is no kitchen yet to take it into.' };
  const plan = tablePlan(csv, kitchen);
  if ('sentence' in plan) return plan;
  const hash = createHash('sha256');
  for (const { doc, before } of [...plan.fresh, ...plan.changed]) hash.update(JSON.stringify([doc, before]));
  return { plan, mark: hash.digest('hex') };
};

export type TakenTable = ({ outcome: 'saved' } & SavedTogether) | { outcome: 'moved' };

/** Takes a table over, all of it or nothing; nothing too when something else would change than was shown. */
export const takeTable = (
  db: Db,
  csv: Csv,
  { mark, draft, ...by }: Saving & { mark: string; draft: string },
): Promise<TakenTable> =>
  saving(db, async (trx) => {
    const planned = await planIn(trx, csv);
    if ('sentence' in planned || planned.mark !== mark || planned.plan.refused.length > 0)
      return { outcome: 'moved' };
    const { entity, fresh, changed } = planned.plan;
    const stored = await storedBy(
      trx,
      entity,
      changed.map(({ doc }) => doc.key),
    );
    const wanted = [...fresh, ...changed].map(({ doc }) => ({
      stored: stored.get(doc.key),
      doc: doc as EntityOf[typeof entity],
    }));
    const saved = await putTogether(trx, { [entity]: wanted }, by);
    await dropDraft(trx, draft);
    return { outcome: 'saved', ...saved };
  });
