import { type Kysely, sql } from 'kysely';

/** Costs beside food, prices, what a party really came to; quotes, payments and numbered papers. */
export const costing = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of statements) await sql.raw(statement).execute(db);
  },
};

const noPrice = '{"by":null,"roundTo":0,"groups":[],"minimum":null,"discount":null,"discountFor":""}';
const noTerms =
  '{"included":"","guestNumbers":"","allergies":"","more":"","validDays":14,"finalCountDays":null,"fewerPercent":null,"instalments":[],"balanceDays":0,"cancellation":[]}';

const statements = [
  `alter table event add column costs jsonb not null default '[]', add column price jsonb not null default '${noPrice}',
    add column afterwards jsonb`,
  `alter table dish add column price bigint`,
  `alter table kitchen add column costs jsonb not null default '[]', add column margin_floor text,
    add column round_to bigint not null default 0, add column terms jsonb not null default '${noTerms}'`,
  `update kitchen set tax = tax || '{"included":false,"rounding":"whole-nearest"}' where jsonb_typeof(tax) = 'object'`,
  `create table quote (id bigint generated always as identity primary key, key text not null unique,
    event text not null references event (key) on delete cascade, number integer not null, state text not null,
    offer jsonb not null, issued date, answered date, taken text, basis jsonb, revision integer not null,
    unique (event, number), check ((state = 'draft') = (issued is null)), check ((issued is null) = (basis is null)))`,
  // What was issued stands for ever, whatever a program does.
  `create function quote_stays() returns trigger language plpgsql as $$
    begin
      if old.issued is not null and (new.offer is distinct from old.offer or new.issued is distinct from old.issued
          or new.number is distinct from old.number or new.event is distinct from old.event
          or new.basis is distinct from old.basis) then
        raise exception 'an issued quote does not change';
      end if;
      return new;
    end $$`,
  `create trigger quote_stays before update on quote for each row execute function quote_stays()`,
  `create table payment (id bigint generated always as identity primary key, key text not null unique,
    event text not null references event (key) on delete cascade, date date not null, amount bigint not null,
    back boolean not null, words text not null, who text not null, at timestamptz not null)`,
  `create index payment_event on payment (event)`,
  `create table numbered_paper (kind text not null, number integer not null, event text not null, paper jsonb not null,
    primary key (kind, number))`,
  `create index numbered_paper_event on numbered_paper (event)`,
];
