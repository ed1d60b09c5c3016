import { type Kysely, sql } from 'kysely';

/** How price lists are read, what they know a pack by, lists that are looked at, and saves made together. */
export const priceLists = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of statements) await sql.raw(statement).execute(db);
  },
};

const statements = [
  `alter table kitchen add column price_lists jsonb not null default '[]'`,
  `alter table pack add column code text not null default ''`,
  `alter table change add column together bigint`,
  `create index change_together on change (together) where together is not null`,
  `create table csv_draft (key text primary key, at timestamptz not null, who text not null,
    kind text not null, text text not null, settings jsonb not null)`,
];
