import { sql } from 'kysely';
import type { EntityName } from '../core/facts/facts.js';
import { read, type Stored } from './documents.js';
import { note } from './history.js';
import { type Gone, gone, hasPapers, homeStays, inUse, type Refused, refused, stale } from './outcome.js';
import { keepsPapers } from './payments.js';
import type { Saving } from './rows.js';
import { saving } from './saves.js';
import type { Db, Trx } from './schema.js';
import { type Use, usesOf } from './uses.js';

/** Removed, and the change that undo takes back; or why not, with what still uses it. */
export type Removal = { outcome: 'removed'; changeId: number } | (Refused & { uses: Use[] }) | Gone;

/** Deletes a document that nothing uses; `revision` is what the form carried. */
export const remove = <N extends EntityName>(
  db: Db,
  entity: N,
  key: string,
  { revision, ...by }: Saving & { revision: number },
): Promise<Removal> =>
  saving(db, async (trx) => {
    const stored = await read(trx, entity, key);
    if (!stored) return gone;
    if (stored.revision !== revision) return { ...refused([stale(entity, key, stored.doc.name)]), uses: [] };
    return takeOut(trx, entity, stored, by);
  });

/** Deletes a stored document unless something uses it. */
export const takeOut = async <N extends EntityName>(
  trx: Trx,
  entity: N,
  stored: Stored<N>,
  by: Saving,
): Promise<Removal> => {
  const { key, doc } = stored;
  const uses = await usesOf(trx, entity, key);
  if (uses.length > 0) return { ...refused([inUse(uses)(entity, key, doc.name)]), uses };
  if (entity === 'event' && (await keepsPapers(trx, key)))
    return { ...refused([hasPapers(entity, key, doc.name)]), uses };
  if (entity === 'kitchen' || ('kind' in doc && doc.kind === 'home'))
    return { ...refused([homeStays(entity, key, doc.name)]), uses };
  await sql`delete from ${sql.table(entity)} where id = ${stored.id}`.execute(trx);
  const revision = stored.revision + 1;
  const changeId = await note(trx, { entity, key, revision, before: doc, after: null }, by);
  return { outcome: 'removed', changeId };
};
