import { sql } from 'kysely';
import { type EntityName, type EntityOf, entities } from '../core/facts/facts.js';
import { type Choices, merge, same } from '../core/merge.js';
import type { Problem } from '../core/problem.js';
import { refusals } from '../core/rules.js';
import { shapeProblems } from '../core/shape-problems.js';
import { read, type Stored } from './documents.js';
import { atRevision, note } from './history.js';
import { knownFor } from './known.js';
import { clash, gone, type Outcome, refused, stale, taken } from './outcome.js';
import { insertDocuments, keyOf, type Saving, updateDocument } from './rows.js';
import type { Db, Trx } from './schema.js';
import { withServed } from './served.js';

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

/** Merges two changes of one base into the stored document, or says where they clash. */
export const join = async <N extends EntityName>(
  trx: Trx,
  entity: N,
  stored: Stored<N>,
  base: EntityOf[N],
  yours: EntityOf[N],
  choices: Choices,
  by: Saving,
): Promise<Outcome<N>> => {
  const merged = merge(base, yours, stored.doc, choices);
  if (merged.clashes.length > 0) return clash(stored, base, yours, merged);
  const outcome = await put(trx, entity, stored, merged.doc, by);
  return outcome.outcome === 'saved' ? { ...outcome, merged: merged.theirs } : outcome;
};

/** Runs one save alone: saves wait for each other, so that no rule is broken by two at once. */
export const saving = <T>(db: Db, save: (trx: Trx) => Promise<T>): Promise<T> =>
  db.transaction().execute(async (trx) => {
    await sql`select pg_advisory_xact_lock(hashtext('catering-workbook saves'))`.execute(trx);
    return save(trx);
  });

/** Adds a document; the first revision goes on where an earlier document of that key ended. */
export const add = async <N extends EntityName>(
  trx: Trx,
  entity: N,
  made: EntityOf[N],
  by: Saving,
): Promise<Outcome<N>> => {
  const key = keyOf(made);
  if (await read(trx, entity, key)) return refused([taken(entity, key, made.name)]);
  const { doc, problems } = await ready(trx, entity, undefined, made, by);
  if (problems.length > 0) return refused(problems);
  const last = await trx
    .selectFrom('change')
    .select((eb) => eb.fn.max('revision').as('revision'))
    .where('entity', '=', entity)
    .where('key', '=', key)
    .executeTakeFirst();
  const revision = (last?.revision ?? 0) + 1;
  await insertDocuments(trx, entity, [{ doc, revision }], by);
  return {
    outcome: 'saved',
    doc,
    revision,
    changeId: await note(trx, { entity, key, revision, before: null, after: doc }, by),
    merged: [],
  };
};

/** Writes a document over the stored one, if the rules allow; one that is the same is left alone. */
const put = async <N extends EntityName>(
  trx: Trx,
  entity: N,
  stored: Stored<N>,
  wanted: EntityOf[N],
  by: Saving,
): Promise<Outcome<N>> => {
  if (keyOf(wanted) !== stored.key) throw new Error('a key never changes');
  const { doc, problems } = await ready(trx, entity, stored.doc, wanted, by);
  if (problems.length > 0) return refused(problems);
  if (same(doc, stored.doc))
    return { outcome: 'saved', doc: stored.doc, revision: stored.revision, changeId: null, merged: [] };
  const revision = stored.revision + 1;
  await updateDocument(trx, entity, { ...stored, revision }, doc, by);
  const noted = { entity, key: stored.key, revision, before: stored.doc, after: doc };
  const changeId = await note(trx, noted, by);
  return { outcome: 'saved', doc, revision, changeId, merged: [] };
};

/** What is to be stored, and why it cannot be. */
const ready = async <N extends EntityName>(
  trx: Trx,
  entity: N,
  before: EntityOf[N] | undefined,
  wanted: EntityOf[N],
  by: Saving,
): Promise<{ doc: EntityOf[N]; problems: Problem[] }> => {
  const shaped = entities[entity].safeParse(wanted);
  if (!shaped.success) return { doc: wanted, problems: shapeProblems(entity, wanted, shaped.error) };
  const parsed = shaped.data as EntityOf[N];
  const owned = before && !same(before, parsed) ? takenOver(before, parsed) : parsed;
  const doc = entity === 'event' ? await withServed(trx, before, owned, by) : owned;
  return { doc, problems: refusals(entity, doc, await knownFor(trx, entity, doc)) };
};

/** An example that somebody changed is that person's own from then on. */
const takenOver = <D extends object>(before: D, doc: D): D =>
  'origin' in before && before.origin === 'example' ? { ...doc, origin: 'own' } : doc;
