import { type Kysely, Migrator, sql } from 'kysely';
import { migrations } from '../../migrations/index.js';
import { Refusal } from './refusal.js';
import type { Db } from './schema.js';

const names = Object.keys(migrations).sort();

/** The last step of the database's shape that this program knows. */
export const schemaVersion = names.at(-1) ?? '';

/** Brings the database to this program's shape; one that a newer program wrote is refused and left as it is. */
export const migrate = async (db: Db): Promise<void> => {
  const there = await applied(db);
  const stranger = there.find((name) => !names.includes(name));
  if (stranger !== undefined)
    throw new Refusal(
      `The database was written by a newer workbook (its step "${stranger}" is not known here): start that version, or use another DATA_DIR or DATABASE_URL.`,
    );
  if (there.length === names.length) return; // asking what there is to do takes longer than the start may
  const migrator = new Migrator({ db, provider: { getMigrations: async () => migrations } });
  const { error } = await migrator.migrateToLatest();
  if (error) throw error;
};

const applied = async (db: Kysely<unknown> | Db): Promise<string[]> => {
  const there = await sql<{
    there: boolean;
  }>`select to_regclass('kysely_migration') is not null as there`.execute(db);
  if (!there.rows[0]?.there) return [];
  const { rows } = await sql<{ name: string }>`select name from kysely_migration order by name`.execute(db);
  return rows.map(({ name }) => name);
};
