import { type Kysely, sql } from 'kysely';

/** What papers of an event said when they were last printed, as hashes; they go with their event. */
export const printedSheets = {
  async up(db: Kysely<unknown>): Promise<void> {
    await sql
      .raw(
        `create table printed_sheet (event text not null references event (key) on delete cascade,
          sheet text not null, who text not null, at timestamptz not null, lines jsonb not null,
          primary key (event, sheet))`,
      )
      .execute(db);
  },
};
