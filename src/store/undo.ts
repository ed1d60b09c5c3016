import type { EntityName } from '../core/facts/facts.js';
import type { Choices } from '../core/merge.js';
import { read } from './documents.js';
import { type Change, changeById } from './history.js';
import { broughtBack, changedSince, gone, type Outcome, refused } from './outcome.js';
import { type Removal, takeOut } from './removal.js';
import type { Saving } from './rows.js';
import { add, join, saving } from './saves.js';
import type { Db, Trx } from './schema.js';

type Undoing = Saving & {
  /** When an undo clashed: the revision whose merge was shown, and a choice for each clash. */
  seen?: number;
  choices?: Choices;
};

/**
 * Takes one save back and keeps what was saved since; where the same line changed since, it clashes ("yours" is the
 * state before the save). Taking back a new document removes it, taking back a removal brings it back.
 */
export const undo = (
  db: Db,
  changeId: number,
  { seen, choices, ...by }: Undoing,
): Promise<Outcome<EntityName> | Removal> =>
  saving(db, async (trx) => {
    const change = await changeById(trx, changeId);
    if (!change) return gone;
    const { entity, key, before, after } = change;
    const stored = await read(trx, entity, key);
    if (before && !after)
      return stored ? refused([broughtBack(entity, key, before.name)]) : add(trx, entity, before, by);
    if (!stored) return gone;
    if (before && after)
      return join(trx, entity, stored, after, before, stored.revision === seen ? (choices ?? {}) : {}, by);
    return takeBackNew(trx, change, stored, by);
  });

const takeBackNew = async (
  trx: Trx,
  { entity, key, revision }: Change<EntityName>,
  stored: NonNullable<Awaited<ReturnType<typeof read<EntityName>>>>,
  by: Saving,
): Promise<Outcome<EntityName> | Removal> =>
  stored.revision === revision
    ? takeOut(trx, entity, stored, by)
    : refused([changedSince(entity, key, stored.doc.name)]);
