import { type Kysely, sql } from 'kysely';

/** Prep periods and what was ticked in them; what was done for an event goes with it. */
export const ticks = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of statements) await sql.raw(statement).execute(db);
  },
};

const statements = [
  `create table prep_period (id bigint generated always as identity primary key, key text not null unique,
    from_day date not null, to_day date not null, check (from_day <= to_day))`,
  `create table prep_period_event (period_id bigint not null references prep_period on delete cascade,
    event text not null references event (key) on delete cascade, primary key (period_id, event))`,
  `create index prep_period_event_event on prep_period_event (event)`,
  `create table tick (period_id bigint not null, event text not null, date date not null, recipe text not null,
    step text not null, batches text, who text not null, at timestamptz not null,
    primary key (period_id, event, date, recipe, step),
    foreign key (period_id, event) references prep_period_event on delete cascade)`,
];
