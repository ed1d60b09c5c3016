import { sql } from 'kysely';
import type { Event } from '../core/facts/event.js';
import type { EntityName, EntityOf } from '../core/facts/facts.js';
import type { Kitchen } from '../core/facts/kitchen.js';
import type { Recipe } from '../core/facts/recipe.js';
import { type Known, type KnownRecipe, nothingKnown } from '../core/known.js';
import { normalName } from '../core/names.js';
import { componentsOf } from '../core/rules/recipe.js';
import { standInsOf } from '../core/rules/substitutes.js';
import type { Db } from './schema.js';

/** What the rules of one document ask of the rest of the kitchen. */
export const knownFor = async <N extends EntityName>(db: Db, entity: N, doc: EntityOf[N]): Promise<Known> =>
  (gather[entity] as Gather[N])(db, doc);

type Gather = { [N in EntityName]: (db: Db, doc: EntityOf[N]) => Promise<Known> };

const gather: Gather = {
  kitchen: async (db, { diets }) => {
    const { rows } = await sql<{ currency: string }>`
      select currency from kitchen where exists (select from price)`.execute(db);
    return {
      ...nothingKnown,
      pricedIn: rows[0]?.currency,
      ingredients: await existing(
        db,
        diets.flatMap(({ avoidsIngredients }) => avoidsIngredients),
      ),
      dietsOfGuests: await dietsOfGuests(db),
    };
  },
  place: async (db, doc) => {
    const homes = await db
      .selectFrom('place')
      .select('name')
      .where('kind', '=', 'home')
      .where('key', '<>', doc.key)
      .execute();
    return { ...nothingKnown, otherHomes: homes.map(({ name }) => name) };
  },
  ingredient: async (db, doc) => {
    const { ingredients, recipes } = standInsOf(doc);
    return {
      ...nothingKnown,
      namesake: await namesake(db, 'ingredient', doc),
      ingredients: await existing(db, ingredients),
      recipes: await named(db, recipes),
    };
  },
  recipe: async (db, doc) => ({
    ...nothingKnown,
    namesake: await namesake(db, 'recipe', doc),
    ingredients: await ingredientKeys(db, doc),
    recipes: await reachable(db, [...componentsOf(doc), ...[doc.variantOf ?? []].flat()]),
  }),
  event: async (db, doc) => ({
    ...nothingKnown,
    places: await placeKeys(db, doc),
    recipes: await recipeNames(db, doc),
    ingredients: await existing(
      db,
      doc.guests.flatMap(({ avoids }) => avoids),
    ),
    diets: await ownDiets(db),
  }),
};

const namesake = (db: Db, table: 'ingredient' | 'recipe', doc: { key: string; name: string }) =>
  db
    .selectFrom(table)
    .select(['key', 'name'])
    .where('name_key', '=', normalName(doc.name))
    .where('key', '<>', doc.key)
    .executeTakeFirst();

const ingredientKeys = (db: Db, { lines }: Recipe): Promise<Set<string>> =>
  existing(
    db,
    lines.flatMap(({ item }) => ('ingredient' in item ? [item.ingredient] : [])),
  );

const existing = async (db: Db, keys: readonly string[]): Promise<Set<string>> => {
  if (keys.length === 0) return new Set();
  const rows = await db.selectFrom('ingredient').select('key').where('key', 'in', keys).execute();
  return new Set(rows.map(({ key }) => key));
};

/** The diets of all guests, each with the name of an event that it is of. */
const dietsOfGuests = async (db: Db): Promise<Map<string, string>> => {
  const { rows } = await sql<{ diet: string; name: string }>`
    select distinct on (diet) diet, e.name from event e join guest g on g.event_id = e.id
      cross join lateral jsonb_array_elements_text(g.diets) as diet
    where not exists (select from event_snapshot s where s.event_id = e.id)
    order by diet, e.name collate "C"`.execute(db);
  return new Map(rows.map(({ diet, name }) => [diet, name]));
};

const ownDiets = async (db: Db): Promise<Set<string>> => {
  const { rows } = await sql<{ diets: Kitchen['diets'] }>`select diets from kitchen`.execute(db);
  return new Set(rows.flatMap(({ diets }) => diets.map(({ key }) => key)));
};

const placeKeys = async (db: Db, { place }: Event): Promise<Set<string>> => {
  const rows = await db.selectFrom('place').select('key').where('key', '=', place).execute();
  return new Set(rows.map(({ key }) => key));
};

const recipeNames = (db: Db, { courses }: Event): Promise<Map<string, KnownRecipe>> =>
  named(
    db,
    courses.flatMap(({ dishes }) => dishes.map(({ recipe }) => recipe)),
  );

const named = async (db: Db, keys: readonly string[]): Promise<Map<string, KnownRecipe>> => {
  if (keys.length === 0) return new Map();
  const rows = await db.selectFrom('recipe').select(['key', 'name']).where('key', 'in', keys).execute();
  return new Map(rows.map(({ key, name }) => [key, { name, components: [], variantOf: null }]));
};

/** Every recipe reached from these through components or variants, however deep. */
const reachable = async (db: Db, from: readonly string[]): Promise<Map<string, KnownRecipe>> => {
  if (from.length === 0) return new Map();
  const { rows } = await sql<KnownRecipe & { key: string }>`
    with recursive reached (key) as (
      select unnest(${from}::text[])
      union
      select other.key from reached join recipe r on r.key = reached.key
        cross join lateral (select component as key from recipe_line where recipe_id = r.id and component is not null
          union select r.variant_of where r.variant_of is not null) as other
    )
    select r.key, r.name, r.variant_of as "variantOf", array(
      select component from recipe_line where recipe_id = r.id and component is not null order by position
    ) as components
    from reached join recipe r on r.key = reached.key`.execute(db);
  return new Map(rows.map(({ key, ...recipe }) => [key, recipe]));
};
