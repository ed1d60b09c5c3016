import { type Kysely, sql } from 'kysely';

/** The day a label's text was taken from it, and photographs of labels: one that stands and the one before it. */
export const labelPhotographs = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of statements) await sql.raw(statement).execute(db);
  },
};

const statements = [
  'alter table ingredient add column label_date date',
  `create table label_photograph (ingredient text not null references ingredient (key) on delete cascade,
    standing boolean not null, taken date not null, pack text not null, type text not null, bytes bytea not null,
    check (octet_length(bytes) between 1 and 8388608), primary key (ingredient, standing))`,
];
