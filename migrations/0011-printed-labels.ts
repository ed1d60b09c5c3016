import { type Kysely, sql } from 'kysely';

/** What labels of food packed ahead said when they were last printed; they go with their recipe. */
export const printedLabels = {
  async up(db: Kysely<unknown>): Promise<void> {
    await sql
      .raw(
        `create table printed_label (recipe text primary key references recipe (key) on delete cascade,
          who text not null, at timestamptz not null, made date not null, use_by date, fingerprint text not null)`,
      )
      .execute(db);
  },
};
