import { type Kysely, sql } from 'kysely';

/** Who saved a quote last; drafts that were withdrawn; payments that were struck out; numbered papers stay as issued. */
export const quotesAtWork = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of statements) await sql.raw(statement).execute(db);
  },
};

const statements = [
  `alter table quote add column updated_by text not null default '', add column updated_at timestamptz,
    add column withdrawn_at timestamptz, drop constraint quote_event_number_key,
    add constraint quote_withdrawn check (withdrawn_at is null or issued is null)`,
  `create unique index quote_number on quote (event, number) where withdrawn_at is null`,
  `alter table payment add column struck date`,
  `create function numbered_paper_stays() returns trigger language plpgsql as $$
    begin
      raise exception 'a numbered paper does not change';
    end $$`,
  `create trigger numbered_paper_stays before update on numbered_paper
    for each row execute function numbered_paper_stays()`,
];
