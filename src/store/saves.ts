import { sql } from 'kysely';
import { type EntityName, type EntityOf, entities } from '../core/facts/facts.js';
import { type Choices, merge, same } from '../core/merge.js';
import type { Problem } from '../core/problem.js';
import { refusals } from '../core/rules.js';
import { shapeProblems } from '../core/shape-problems.js';
import { read, type Stored } from './documents.js';
import { note } from './history.js';
import { knownFor } from './known.js';
import { clash, type Outcome, refused, taken } from './outcome.js';
import { insertDocuments, keyOf, type Saving, updateDocument } from './rows.js';
import type { Db, Trx } from './schema.js';
import { withServed } from './served.js';

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
export const put = async <N extends EntityName>(
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
