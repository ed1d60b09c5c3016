import { sql } from 'kysely';
import type { Event } from '../core/facts/event.js';
import { byKey, type Facts } from '../core/facts/facts.js';
import { load, type Stored, versionOf } from './documents.js';
import { kitchenKey } from './entities/index.js';
import { type Below, type Bulk, keptBelow, loadKept, type Version } from './kept.js';
import type { Db, Trx } from './schema.js';

type Wanted = { recipes: readonly string[]; places?: readonly string[] };

/** Events with all that their sheets are calculated from, as it stood at one moment. */
export type EventFacts = { events: Event[]; facts: Facts; stored: Stored<'event'>[] };

/**
 * The events of these keys, in the order of the keys, and their facts in one consistent read; unknown keys are left
 * out. undefined while there is no kitchen.
 */
export const eventFacts = (db: Db, keys: readonly string[]): Promise<EventFacts | undefined> =>
  consistently(db, async (trx) => {
    const found = new Map((await load(trx, 'event', { keys })).map((event) => [event.key, event]));
    const stored = keys.flatMap((key) => found.get(key) ?? []);
    const events = stored.map(({ doc }) => doc);
    const facts = await loadFacts(trx, {
      recipes: events.flatMap(({ courses }) =>
        courses.flatMap(({ dishes }) => dishes.map(({ recipe }) => recipe)),
      ),
      places: events.map(({ place }) => place),
    });
    return facts && { events, facts, stored };
  });

/** Several reads of one moment, whatever is saved meanwhile. */
export const consistently = <T>(db: Db, reading: (trx: Trx) => Promise<T>): Promise<T> =>
  db.transaction().setIsolationLevel('repeatable read').setAccessMode('read only').execute(reading);

/**
 * Recipes with their components through any depth, their ingredients, the home kitchen and other places named; of
 * each pack the latest price alone, which is all that sheets use. undefined while there is no kitchen.
 */
export const loadFacts = async (db: Db, { recipes, places = [] }: Wanted): Promise<Facts | undefined> => {
  const [kitchen] = await load(db, 'kitchen', { keys: [kitchenKey] });
  if (!kitchen) return undefined;
  const below = keptBelow(db, recipes, kitchen.snapshot) ?? (await loadBelow(db, recipes, kitchen.snapshot));
  const wanted = new Set(places);
  const everywhere = await load(db, 'place');
  return {
    kitchen: kitchen.doc,
    ...below,
    places: byKey(
      everywhere.map(({ doc }) => doc).filter(({ key, kind }) => kind === 'home' || wanted.has(key)),
    ),
  };
};

const loadBelow = async (db: Db, keys: readonly string[], snapshot: string | null): Promise<Below> => {
  const named = await versionsBelow(db, keys);
  return {
    recipes: await loadKept(db, 'recipe', named.recipe, snapshot),
    ingredients: await loadKept(db, 'ingredient', named.ingredient, snapshot),
  };
};

/**
 * Recipes with their components through any depth and all their ingredients, each with its version. The database can't
 * guess how few they are: `offset 0` and arrays keep it from reading whole tables for them.
 */
const versionsBelow = async (db: Db, keys: readonly string[]): Promise<Record<Bulk, Version[]>> => {
  const named: Record<Bulk, Version[]> = { recipe: [], ingredient: [] };
  if (keys.length === 0) return named;
  const { rows } = await sql<Version & { entity: Bulk }>`
    with recursive needed (id) as (
      select id from recipe where key = any(${[...new Set(keys)]})
      union
      select below.id from needed cross join lateral (
        select recipe.id from recipe_line join recipe on recipe.key = recipe_line.component
        where recipe_line.recipe_id = needed.id offset 0) as below
    )
    select 'recipe' as entity, key, ${versionOf('recipe')} as version
      from recipe where id = any(array(select id from needed))
    union all
    select 'ingredient', key, ${versionOf('ingredient')} from ingredient where key = any(array(
      select ingredient from recipe_line where recipe_id = any(array(select id from needed))))`.execute(db);
  for (const { entity, key, version } of rows) named[entity].push({ key, version });
  return named;
};
