import type { EntityName, EntityOf } from '../core/facts/facts.js';
import type { Choices } from '../core/merge.js';
import { read } from './documents.js';
import { atRevision } from './history.js';
import { gone, type Outcome, refused, stale } from './outcome.js';
import type { Saving } from './rows.js';
import { add, join, put, saving } from './saves.js';
import type { Db, Trx } from './schema.js';

export type { Outcome } from './outcome.js';
export type { Saving } from './rows.js';

type Change<D> = Saving & {
  /** The revision the form carried. */
  revision: number;
  change: (doc: D) => D;
};

/** Adds a document under a key of its own. */
export const create = <N extends EntityName>(
  db: Db,
  entity: N,
  doc: EntityOf[N],
  by: Saving,
): Promise<Outcome<N>> => saving(db, (trx) => add(trx, entity, doc, by));

/**
 * Saves a change of a document. When somebody saved since the form's revision, both changes are merged; where they
 * touch the same field or line the outcome is a clash and nothing is saved.
 */
export const edit = <N extends EntityName>(
  db: Db,
  entity: N,
  key: string,
  change: Change<EntityOf[N]>,
): Promise<Outcome<N>> => saving(db, (trx) => editIn(trx, entity, key, change));

/** The same within a save of more. */
export const editIn = async <N extends EntityName>(
  trx: Trx,
  entity: N,
  key: string,
  { revision, change, ...by }: Change<EntityOf[N]>,
): Promise<Outcome<N>> => {
  const stored = await read(trx, entity, key);
  if (!stored) return gone;
  if (stored.revision === revision) return put(trx, entity, stored, change(stored.doc), by);
  const base = await atRevision(trx, entity, key, revision);
  return base
    ? join(trx, entity, stored, base, change(base), {}, by)
    : refused([stale(entity, key, stored.doc.name)]);
};

type Resolution<D> = Saving & {
  /** The revision the form began from, and the one whose merge was shown. */
  base: number;
  seen: number;
  yours: D;
  choices: Choices;
};

/** Saves a merge with a choice for each clash; when somebody saved again meanwhile, the clashes of that are asked. */
export const resolve = <N extends EntityName>(
  db: Db,
  entity: N,
  key: string,
  { base, seen, yours, choices, ...by }: Resolution<EntityOf[N]>,
): Promise<Outcome<N>> =>
  saving(db, async (trx) => {
    const stored = await read(trx, entity, key);
    if (!stored) return gone;
    const from = await atRevision(trx, entity, key, base);
    if (!from) return refused([stale(entity, key, stored.doc.name)]);
    return join(trx, entity, stored, from, yours, stored.revision === seen ? choices : {}, by);
  });
