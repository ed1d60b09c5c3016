import { type Kysely, sql } from 'kysely';

/**
 * What a kitchen keeps. A row owns its parts by id; rows refer to each other by key, and a reference holds what it
 * names (no action on delete), so that nothing in use can vanish. Amounts are text, money whole minor units.
 */
export const ground = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of statements) await sql.raw(statement).execute(db);
  },
};

const id = 'id bigint generated always as identity primary key';
const revised = `revision integer not null, updated_at timestamptz not null, updated_by text not null`;
const kept = `archived_at timestamptz, origin text not null check (origin in ('own', 'example')), ${revised}`;

const statements = [
  `create table kitchen (${id}, key text not null unique check (key = 'kitchen'),
    name text not null, currency text not null, time_zone text not null, locale text not null,
    units text not null, heat text not null, cup text not null, paper text not null,
    allergen_list text not null, tax jsonb, letter_keys boolean not null, people jsonb not null, ${revised})`,

  `create table place (${id}, key text not null unique, name text not null, name_key text not null,
    kind text not null check (kind in ('home', 'venue')), ovens jsonb not null,
    rings integer not null, mixers integer not null, fridge_shelves integer not null,
    freezer_shelves integer not null, water text not null, access jsonb, drive integer,
    note text not null, ${kept})`,
  `create unique index place_home on place (kind) where kind = 'home'`,

  `create table ingredient (${id}, key text not null unique, name text not null, name_key text not null unique,
    section text not null, not_bought boolean not null, frozen boolean not null, edible_yield jsonb,
    density jsonb, weights jsonb not null, allergens jsonb not null, traits jsonb not null,
    keeping jsonb not null, note text not null, ${kept})`,
  `create table pack (${id}, ingredient_id bigint not null references ingredient on delete cascade,
    key text not null, position integer not null, supplier text not null, brand text not null,
    size_amount text not null, size_unit text not null, preferred boolean not null,
    withdrawn_at timestamptz, unique (ingredient_id, key))`,
  `create table price (${id}, ingredient_id bigint not null, pack text not null, key text not null,
    position integer not null, date date not null, price bigint not null check (price >= 0),
    guess boolean not null, withdrawn_at timestamptz,
    foreign key (ingredient_id, pack) references pack (ingredient_id, key) on delete cascade)`,
  `create unique index price_live on price (ingredient_id, pack, key) where withdrawn_at is null`,
  `create index price_latest on price (ingredient_id, pack, date desc, position desc)
    where withdrawn_at is null`,

  `create table recipe (${id}, key text not null unique, name text not null, name_key text not null unique,
    variant_of text references recipe (key), yield_portions text, yield_weight jsonb, yield_volume jsonb,
    by_piece boolean not null, cooking_loss text, cup text, keeping_days integer, note text not null, ${kept})`,
  `create index recipe_variant_of on recipe (variant_of)`,
  `create table recipe_line (${id}, recipe_id bigint not null references recipe on delete cascade,
    key text not null, position integer not null, amount text, unit text not null,
    ingredient text references ingredient (key), component text references recipe (key),
    preparation text not null, stated text not null, scales text not null,
    check (num_nonnulls(ingredient, component) = 1), unique (recipe_id, key))`,
  `create index recipe_line_ingredient on recipe_line (ingredient)`,
  `create index recipe_line_component on recipe_line (component)`,
  `create table recipe_step (${id}, recipe_id bigint not null references recipe on delete cascade,
    key text not null, position integer not null, words text not null, minutes integer,
    minutes_longest integer, attended boolean not null, oven jsonb, portions_per_shelf text,
    rings integer not null, mixers integer not null, fridge_shelves integer not null, after jsonb not null,
    served_within integer, at_place text not null, days_ahead integer not null, unique (recipe_id, key))`,

  `create table event (${id}, key text not null unique, name text not null, name_key text not null,
    client text not null, client_key text not null, date date not null, place text not null references place (key),
    state text not null, eats_all integer not null, over_catering text not null, note text not null, ${kept})`,
  `create index event_date on event (date)`,
  `create index event_place on event (place)`,
  `create table guest_group (${id}, event_id bigint not null references event on delete cascade,
    key text not null, position integer not null, name text not null, guests integer not null,
    portion text not null, unique (event_id, key))`,
  `create table guest (${id}, event_id bigint not null references event on delete cascade,
    key text not null, position integer not null, name text not null, name_key text not null,
    count integer not null, guest_group text not null, answered boolean not null, diets jsonb not null,
    other text not null, unique (event_id, key),
    foreign key (event_id, guest_group) references guest_group (event_id, key)
      deferrable initially deferred)`,
  `create table course (${id}, event_id bigint not null references event on delete cascade,
    key text not null, position integer not null, name text not null, time text not null,
    day_after boolean not null, unique (event_id, key))`,
  `create table dish (${id}, event_id bigint not null, course text not null, key text not null,
    position integer not null, recipe text not null references recipe (key), portion jsonb,
    eaters jsonb not null, unique (event_id, course, key),
    foreign key (event_id, course) references course (event_id, key) on delete cascade)`,
  `create index dish_recipe on dish (recipe)`,
  `create table event_snapshot (event_id bigint primary key references event on delete cascade,
    served jsonb not null)`,

  `create table change (${id}, at timestamptz not null, who text not null, entity text not null,
    key text not null, revision integer not null, before jsonb, after jsonb)`,
  `create index change_of on change (entity, key, revision)`,
  `create index change_at on change (at)`,

  `create table account (${id}, key text not null unique, name text not null, name_key text not null unique,
    password_hash text not null, created_at timestamptz not null)`,
  `create table session (id_hash text primary key, account_id bigint references account on delete cascade,
    session jsonb not null, expires_at timestamptz not null)`,
  `create index session_expires_at on session (expires_at)`,
];
