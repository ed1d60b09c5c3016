import { type Kysely, sql } from 'kysely';

/** Recipes that were read and not yet confirmed, as they stand on the page. */
export const drafts = {
  async up(db: Kysely<unknown>): Promise<void> {
    await sql
      .raw(
        `create table draft (id bigint generated always as identity primary key,
          name text not null, read jsonb not null, form jsonb not null, text text not null,
          recipe text, thrown_at timestamptz, made_at timestamptz not null,
          revision integer not null, updated_at timestamptz not null, updated_by text not null)`,
      )
      .execute(db);
  },
};
