import { type Kysely, sql } from 'kysely';

/** Ranges, cooked yields, tins, pans and the step of the scales: what scaling turns on. */
export const quantities = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of statements) await sql.raw(statement).execute(db);
  },
};

const statements = [
  `alter table recipe add column tin jsonb`,
  `alter table recipe_line add column amount_to text, add column cooked text not null default ''`,
  `alter table recipe_step add column pan text`,
  `alter table ingredient add column cooked_yields jsonb not null default '[]'`,
  `alter table place add column pans jsonb not null default '[]'`,
  `alter table kitchen add column scale_step text not null default '0.5'`,
];
