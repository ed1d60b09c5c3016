import type { EntityName, EntityOf } from '../core/facts/facts.js';
import { merge } from '../core/merge.js';
import type { Problem } from '../core/problem.js';
import { refusals } from '../core/rules.js';
import { type Change, changesTogether } from './history.js';
import { knownFor } from './known.js';
import { broughtBack, changedSince, type Gone, gone, inUse, type Refused, refused } from './outcome.js';
import type { Saving } from './rows.js';
import { saving } from './saves.js';
import type { Db, Trx } from './schema.js';
import { putTogether, type SavedTogether, storedBy, type Wanted, type Writes } from './together.js';
import { usesOf } from './uses.js';

export type Undone = ({ outcome: 'saved' } & SavedTogether) | Refused | Gone;

/**
 * Takes back everything that was saved together and keeps what was saved since; where one place was changed since, or
 * something new is in use by now, nothing is taken back and the outcome says what stands in the way.
 */
export const undoTogether = (db: Db, together: number, by: Saving): Promise<Undone> =>
  saving(db, async (trx) => {
    const changes = await changesTogether(trx, together);
    if (changes.length === 0) return gone;
    const problems: Problem[] = [];
    const writes: Writes = {};
    for (const entity of new Set(changes.map((change) => change.entity)))
      Object.assign(writes, { [entity]: await backwards(trx, entity, changes, problems) });
    if (problems.length > 0) return refused(problems);
    return { outcome: 'saved', ...(await putTogether(trx, writes, by)) };
  });

const backwards = async <N extends EntityName>(
  trx: Trx,
  entity: N,
  all: readonly Change<EntityName>[],
  problems: Problem[],
): Promise<Wanted<N>[]> => {
  const changes = all.filter((change) => change.entity === entity) as unknown as Change<N>[];
  const stored = await storedBy(
    trx,
    entity,
    changes.map(({ key }) => key),
  );
  const within = new Set(all.map(({ entity, key }) => `${entity} ${key}`));
  const wanted: Wanted<N>[] = [];
  for (const change of changes) {
    const there = stored.get(change.key);
    const { before, after, key, revision } = change;
    const name = (after ?? before)?.name ?? key;
    if (!there && before && !after) wanted.push({ stored: undefined, doc: before });
    else if (there && before && !after) problems.push(broughtBack(entity, key, name));
    else if (there && !before) {
      const uses = (await usesOf(trx, entity, key)).filter((use) => !within.has(`${use.entity} ${use.key}`));
      if (there.revision !== revision) problems.push(changedSince(entity, key, name));
      else if (uses.length > 0) problems.push(inUse(uses)(entity, key, name));
      else wanted.push({ stored: there, doc: null });
    } else if (there && before && after) {
      const doc = there.revision === revision ? before : merged(after, before, there.doc);
      if (!doc) problems.push(clashedSince(entity, key, name));
      else {
        if (doc.name !== there.doc.name || entity === 'recipe')
          problems.push(...refusals(entity, doc, await knownFor(trx, entity, doc)));
        wanted.push({ stored: there, doc });
      }
    }
  }
  return wanted;
};

const clashedSince = (entity: EntityName, key: string, name: string): Problem => ({
  weight: 'stop',
  code: 'clashed-since',
  sentence: `${name} was changed since in the same place: take that back first, in its history.`,
  subject: { entity, key, name },
});

const merged = <D extends EntityOf[EntityName]>(after: D, before: D, now: D): D | undefined => {
  const { doc, clashes } = merge(after, before, now);
  return clashes.length > 0 ? undefined : doc;
};
