import { type RawBuilder, sql } from 'kysely';
import type { EntityName } from '../core/facts/facts.js';
import type { Db } from './schema.js';

/** What names a document: a recipe, an event, the kitchen whose own diet avoids it, or what it stands in for. */
export type Use = { entity: 'recipe' | 'event' | 'kitchen' | 'ingredient'; key: string; name: string };

/** Everything that would lose something if the document went, by name. */
export const usesOf = async (db: Db, entity: EntityName, key: string): Promise<Use[]> => {
  const asked = asks[entity]?.(key);
  if (!asked) return [];
  const { rows } = await sql<Use>`select distinct entity, key, name, name_key collate "C" as by_name
    from (${asked}) as uses order by by_name, key`.execute(db);
  return rows.map(({ entity, key, name }) => ({ entity, key, name }));
};

const recipe = sql`select 'recipe' as entity, r.key, r.name, r.name_key from recipe r`;
const event = sql`select 'event' as entity, e.key, e.name, e.name_key from event e`;

/** Ingredients that something may stand in for. */
const standsIn = (
  item: object,
) => sql`select 'ingredient' as entity, i.key, i.name, i.name_key from ingredient i
  where i.substitutes @> ${JSON.stringify([{ item }])}::jsonb`;

const asks: { [N in EntityName]?: (key: string) => RawBuilder<unknown> } = {
  ingredient: (key) => sql`${recipe} join recipe_line l on l.recipe_id = r.id where l.ingredient = ${key}
    union all ${event} join guest g on g.event_id = e.id where g.avoids @> to_jsonb(${key}::text)
    union all select 'kitchen', 'kitchen', k.name, k.name from kitchen k
      cross join lateral jsonb_array_elements(k.diets) d where d->'avoidsIngredients' @> to_jsonb(${key}::text)
    union all ${standsIn({ ingredient: key })}`,
  recipe: (key) => sql`${recipe} join recipe_line l on l.recipe_id = r.id where l.component = ${key}
    union all ${recipe} where r.variant_of = ${key}
    union all ${event} join dish d on d.event_id = e.id where d.recipe = ${key}
    union all ${standsIn({ component: key })}`,
  place: (key) => sql`${event} where e.place = ${key}`,
};
