import { randomBytes } from 'node:crypto';
import type { Saving } from './rows.js';
import type { Db } from './schema.js';
import type { CsvDraftTable } from './tables.js';

/** A text somebody sent and looks at before it is taken over; `settings` is what was chosen for it so far. */
export type CsvDraft<S> = { key: string; kind: CsvDraftTable['kind']; text: string; settings: S };

const day = 86_400_000;

/** Keeps a text until it is taken over, a week at most, and returns the key it is found under. */
export const keepDraft = async (
  db: Db,
  { kind, text, settings }: Omit<CsvDraft<unknown>, 'key'>,
  { who, at }: Saving,
): Promise<string> => {
  await db
    .deleteFrom('csv_draft')
    .where('at', '<', new Date(at.getTime() - 7 * day))
    .execute();
  const key = randomBytes(9).toString('hex');
  await db
    .insertInto('csv_draft')
    .values({ key, at, who, kind, text, settings: JSON.stringify(settings) })
    .execute();
  return key;
};

/** A kept text; undefined when it was taken over, dropped or never was. */
export const draftBy = async <S>(
  db: Db,
  kind: CsvDraftTable['kind'],
  key: string,
): Promise<CsvDraft<S> | undefined> =>
  (await db
    .selectFrom('csv_draft')
    .select(['key', 'kind', 'text', 'settings'])
    .where('key', '=', key)
    .where('kind', '=', kind)
    .executeTakeFirst()) as CsvDraft<S> | undefined;

/** Keeps what was chosen for a text. */
export const chooseFor = async (db: Db, key: string, settings: unknown): Promise<void> => {
  await db
    .updateTable('csv_draft')
    .set({ settings: JSON.stringify(settings) })
    .where('key', '=', key)
    .execute();
};

/** Forgets a text. */
export const dropDraft = async (db: Db, key: string): Promise<void> => {
  await db.deleteFrom('csv_draft').where('key', '=', key).execute();
};
