import { type Kysely, sql } from 'kysely';

/** What a label says word for word, what stands in for what, how food reaches guests, and diets of one's own. */
export const diets = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of statements) await sql.raw(statement).execute(db);
  },
};

const statements = [
  `alter table ingredient add column label_text text not null default '',
    add column substitutes jsonb not null default '[]'`,
  `alter table recipe_step add column equipment jsonb not null default '[]'`,
  `alter table guest add column avoids jsonb not null default '[]',
    add column traces boolean not null default true, add column seat text not null default ''`,
  `alter table course add column service text not null default 'plated'`,
  `alter table dish add column service text, add column kept_apart text not null default '',
    add column kept_for jsonb not null default '[]'`,
  `alter table kitchen add column diets jsonb not null default '[]', add column diets_kept_days integer`,
];
