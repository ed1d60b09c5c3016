import { type SqlBool, sql } from 'kysely';
import type { RecipeDraft } from '../core/exchange/recipe/draft.js';
import type { Saving } from './rows.js';
import type { Db, Trx } from './schema.js';

/** A recipe that was read and is not confirmed yet: what was read, and the form as it was last sent. */
export type KeptDraft = {
  id: number;
  name: string;
  read: RecipeDraft;
  form: unknown;
  text: string;
  revision: number;
  updatedAt: Date;
  updatedBy: string;
};
type Begun = Pick<KeptDraft, 'name' | 'read' | 'form' | 'text'>;
export type ListedDraft = Pick<KeptDraft, 'id' | 'name' | 'updatedAt' | 'updatedBy'>;

/** Keeps what was read, one draft a recipe; returns their numbers in that order. */
export const keepDrafts = async (db: Db, begun: readonly Begun[], { who, at }: Saving): Promise<number[]> => {
  const rows = begun.map(({ name, read, form, text }) => ({
    name,
    read: JSON.stringify(read),
    form: JSON.stringify(form),
    text,
    recipe: null,
    thrown_at: null,
    made_at: at,
    revision: 1,
    updated_at: at,
    updated_by: who,
  }));
  const ids: number[] = [];
  await db.transaction().execute(async (trx) => {
    for (const row of rows) {
      const { id } = await trx.insertInto('draft').values(row).returning('id').executeTakeFirstOrThrow();
      ids.push(id);
    }
  });
  return ids;
};

/** A draft whose recipe was made is one no longer, unless that save was taken back. */
const open = sql<SqlBool>`thrown_at is null and not exists (select from recipe where recipe.key = draft.recipe)`;

/** The drafts still to be confirmed, the latest first, two hundred at most. */
export const openDrafts = (db: Db): Promise<ListedDraft[]> =>
  db
    .selectFrom('draft')
    .select(['id', 'name', 'updated_at as updatedAt', 'updated_by as updatedBy'])
    .where(open)
    .orderBy('updated_at', 'desc')
    .orderBy('id')
    .limit(200)
    .execute();

/** A draft, thrown away or not, with the recipe made of it while that stands; undefined when there is none. */
export const readDraft = async (
  db: Db,
  id: number,
): Promise<(KeptDraft & { recipe: string | null; thrown: boolean }) | undefined> => {
  const row = await db
    .selectFrom('draft')
    .selectAll()
    .select(open.as('open'))
    .where('id', '=', id)
    .executeTakeFirst();
  if (!row) return undefined;
  const { name, read, form, text, revision, updated_at, updated_by } = row;
  const thrown = row.thrown_at !== null;
  const recipe = row.open || thrown ? null : row.recipe;
  return {
    id,
    name,
    read,
    form,
    text,
    revision,
    updatedAt: updated_at,
    updatedBy: updated_by,
    recipe,
    thrown,
  };
};

/** Keeps a draft as it stands on the page; undefined when somebody saved it since that revision. */
export const saveDraft = async (
  db: Db,
  { id, revision, name, form }: { id: number; revision: number; name: string; form: unknown },
  { who, at }: Saving,
): Promise<number | undefined> => {
  const next = revision + 1;
  const row = await db
    .updateTable('draft')
    .set({ name, form: JSON.stringify(form), revision: next, updated_at: at, updated_by: who })
    .where('id', '=', id)
    .where('revision', '=', revision)
    .returning('id')
    .executeTakeFirst();
  return row && next;
};

/** Throws a draft away, or takes that back. */
export const throwDraft = async (db: Db, id: number, at: Date | null): Promise<void> => {
  await db.updateTable('draft').set({ thrown_at: at }).where('id', '=', id).execute();
};

/** Notes in the save that makes it which recipe a draft became; false when somebody saved the draft since. */
export const becomes = async (
  trx: Trx,
  { id, revision }: { id: number; revision: number },
  recipe: string,
): Promise<boolean> => {
  const row = await trx
    .updateTable('draft')
    .set({ recipe })
    .where('id', '=', id)
    .where('revision', '=', revision)
    .returning('id')
    .executeTakeFirst();
  return row !== undefined;
};

/** Drops drafts that were thrown away or made into a recipe before a moment. */
export const forgetDrafts = async (db: Db, moment: Date): Promise<void> => {
  await db.deleteFrom('draft').where('updated_at', '<', moment).where(sql<SqlBool>`not (${open})`).execute();
};
