import { sql } from 'kysely';
import type { Event } from '../core/facts/event.js';
import { byKey, type Facts } from '../core/facts/facts.js';
import { load, type Stored } from './documents.js';
import { kitchenKey } from './entities/index.js';
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
  const made = (await load(db, 'recipe', { keys: await withComponents(db, recipes) })).map(({ doc }) => doc);
  const keys = made.flatMap(({ lines }) =>
    lines.flatMap(({ item }) => ('ingredient' in item ? [item.ingredient] : [])),
  );
  const ingredients = await load(db, 'ingredient', { keys: [...new Set(keys)], latestPrices: true });
  const wanted = new Set(places);
  const everywhere = await load(db, 'place');
  return {
    kitchen: kitchen.doc,
    recipes: byKey(made),
    ingredients: byKey(ingredients.map(({ doc }) => doc)),
    places: byKey(
      everywhere.map(({ doc }) => doc).filter(({ key, kind }) => kind === 'home' || wanted.has(key)),
    ),
  };
};

const withComponents = async (db: Db, keys: readonly string[]): Promise<string[]> => {
  if (keys.length === 0) return [];
  const { rows } = await sql<{ key: string }>`
    with recursive needed (key) as (
      select unnest(${[...new Set(keys)]}::text[])
      union
      select recipe_line.component from needed join recipe on recipe.key = needed.key
        join recipe_line on recipe_line.recipe_id = recipe.id where recipe_line.component is not null
    )
    select key from needed`.execute(db);
  return rows.map(({ key }) => key);
};
