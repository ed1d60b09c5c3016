import { sql } from 'kysely';
import type { Event } from '../core/facts/event.js';
import { byKey, type Facts } from '../core/facts/facts.js';
import { load, type Stored, versionOf } from './documents.js';
import { shapeOf } from './entities/index.js';
import type { Row } from './entities/shape.js';
import { type Bulk, loadKept, type Version } from './kept.js';
import type { Db, Trx } from './schema.js';
import { type FromSnapshot, snapshot, whileUnchanged } from './unchanged.js';

type Wanted = {
  recipes: readonly string[];
  places?: readonly string[];
  /** Ingredients beside those of the recipes, such as those that guests avoid. */
  ingredients?: readonly string[];
};

/** Events with all that their sheets are calculated from, as it stood at one moment. */
export type EventFacts = { events: Event[]; facts: Facts; stored: Stored<'event'>[] };

/**
 * The events of these keys, in the order of the keys, and their facts in one consistent read; unknown keys are left
 * out. undefined while there is no kitchen.
 */
export const eventFacts = async (db: Db, keys: readonly string[]): Promise<EventFacts | undefined> => {
  const found = await whileUnchanged(db, `facts of ${keys.join(' ')}`, () => readEventFacts(db, keys));
  // Facts of one's own, so that each page works out its figures afresh.
  return found && { ...found, facts: { ...found.facts } };
};

const readEventFacts = (db: Db, keys: readonly string[]): Promise<FromSnapshot<EventFacts | undefined>> =>
  consistently(db, async (trx) => {
    const found = new Map((await load(trx, 'event', { keys })).map((event) => [event.key, event]));
    const stored = keys.flatMap((key) => found.get(key) ?? []);
    const events = stored.map(({ doc }) => doc);
    const { snapshot, answer: facts } = await factsFor(trx, {
      recipes: events.flatMap(({ courses }) =>
        courses.flatMap(({ dishes }) => dishes.map(({ recipe }) => recipe)),
      ),
      places: events.map(({ place }) => place),
      ingredients: events.flatMap(({ guests }) => guests.flatMap(({ avoids }) => avoids)),
    });
    return { snapshot, answer: facts && { events, facts, stored } };
  });

/** Several reads of one moment, whatever is saved meanwhile. */
export const consistently = <T>(db: Db, reading: (trx: Trx) => Promise<T>): Promise<T> =>
  db.transaction().setIsolationLevel('repeatable read').setAccessMode('read only').execute(reading);

/**
 * Recipes with their components through any depth, their ingredients, the home kitchen and other places named; of
 * each pack the latest price alone, which is all that sheets use. undefined while there is no kitchen.
 */
export const loadFacts = async (db: Db, wanted: Wanted): Promise<Facts | undefined> =>
  (await factsFor(db, wanted)).answer;

/**
 * Every recipe and ingredient of the kitchen, archived ones too, and its places, as they stood at one moment; the very
 * same facts for as long as nothing is saved. undefined while there is no kitchen.
 */
export const kitchenFacts = (db: Db): Promise<Facts | undefined> =>
  whileUnchanged(db, 'facts of the kitchen', () =>
    consistently(db, async (trx) => {
      const { snapshot, kitchen, everywhere } = await ground(trx);
      if (!kitchen) return { snapshot, answer: undefined };
      const [recipes, ingredients] = [
        await everyVersion(trx, 'recipe'),
        await everyVersion(trx, 'ingredient'),
      ];
      const answer = {
        kitchen,
        recipes: await loadKept(trx, 'recipe', recipes),
        ingredients: await loadKept(trx, 'ingredient', ingredients),
        places: byKey(everywhere),
      };
      return { snapshot, answer };
    }),
  );

/** Everything of a kind, with the version it has now. */
export const everyVersion = async (db: Db, entity: Bulk): Promise<Version[]> => {
  const { rows } = await sql<Version>`
    select key, ${versionOf(entity)} as version from ${sql.table(entity)}`.execute(db);
  return rows;
};

const factsFor = async (
  db: Db,
  { recipes, places = [], ingredients = [] }: Wanted,
): Promise<FromSnapshot<Facts | undefined>> => {
  const { snapshot, kitchen, everywhere } = await ground(db);
  if (!kitchen) return { snapshot, answer: undefined };
  const avoided = kitchen.diets.flatMap(({ avoidsIngredients }) => avoidsIngredients);
  const named = await versionsBelow(db, recipes, [...new Set([...ingredients, ...avoided])]);
  const wanted = new Set(places);
  const answer = {
    kitchen,
    recipes: await loadKept(db, 'recipe', named.recipe),
    ingredients: await loadKept(db, 'ingredient', named.ingredient),
    places: byKey(everywhere.filter(({ key, kind }) => kind === 'home' || wanted.has(key))),
  };
  return { snapshot, answer };
};

/** The kitchen and all its places, the latter by key, with the snapshot they are of. */
const ground = async (db: Db) => {
  const { rows } = await sql<{ snapshot: string; kitchen: Row | null; places: Row[] | null }>`
    select ${snapshot} as snapshot, (select to_json(kitchen) from kitchen) as kitchen,
      (select json_agg(place order by key collate "C") from place) as places`.execute(db);
  const { snapshot: now, kitchen, places } = rows[0]!;
  return {
    snapshot: now,
    kitchen: kitchen ? shapeOf('kitchen').doc(kitchen as never) : undefined,
    everywhere: (places ?? []).map((place) => shapeOf('place').doc(place as never)),
  };
};

/**
 * Recipes with their components through any depth and all their ingredients and those named beside, with their versions. The database can't
 * guess how few they are: `offset 0` and arrays keep it from reading whole tables for them.
 */
const versionsBelow = async (
  db: Db,
  keys: readonly string[],
  beside: readonly string[],
): Promise<Record<Bulk, Version[]>> => {
  const named: Record<Bulk, Version[]> = { recipe: [], ingredient: [] };
  if (keys.length + beside.length === 0) return named;
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
      select ingredient from recipe_line where recipe_id = any(array(select id from needed))
      union select unnest(${beside}::text[])))`.execute(db);
  for (const { entity, key, version } of rows) named[entity].push({ key, version });
  return named;
};
