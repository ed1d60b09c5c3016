import { sql } from 'kysely';
import type { RecipeYield } from '../core/facts/recipe.js';
import type { Db } from './schema.js';

/** What a list of recipes shows of each. */
export type RecipeRow = {
  key: string;
  name: string;
  yield: RecipeYield;
  variantOf: string | null;
  archived: boolean;
  origin: 'own' | 'example';
  updatedAt: Date;
  lines: number;
  steps: number;
  /** In how many other recipes it is a component, and on the menu of how many events. */
  inRecipes: number;
  inEvents: number;
};

/** Every recipe, archived ones too, by key. */
export const list = async (db: Db): Promise<RecipeRow[]> => {
  const { rows } = await sql<RecipeRow>`
    select r.key, r.name, jsonb_build_object('portions', r.yield_portions, 'weight', r.yield_weight,
        'volume', r.yield_volume) as yield,
      r.variant_of as "variantOf", r.archived_at is not null as archived, r.origin, r.updated_at as "updatedAt",
      coalesce(l.lines, 0) as lines, coalesce(s.steps, 0) as steps,
      coalesce(c.uses, 0) as "inRecipes", coalesce(d.uses, 0) as "inEvents"
    from recipe r
    left join (select recipe_id, count(*) as lines from recipe_line group by recipe_id) l on l.recipe_id = r.id
    left join (select recipe_id, count(*) as steps from recipe_step group by recipe_id) s on s.recipe_id = r.id
    left join (select component, count(distinct recipe_id) as uses from recipe_line group by component) c
      on c.component = r.key
    left join (select recipe, count(distinct event_id) as uses from dish group by recipe) d on d.recipe = r.key
    order by r.key collate "C"`.execute(db);
  return rows;
};

type Other = { key: string; name: string };

/** The recipes that a recipe is a component of, and those that are variants of it, each by name. */
export const relativesOf = async (db: Db, key: string): Promise<{ usedIn: Other[]; variants: Other[] }> => {
  const { rows } = await sql<Other & { variant: boolean }>`
    select r.key, r.name, false as variant, r.name_key collate "C" as by_name from recipe r
      where exists (select from recipe_line l where l.recipe_id = r.id and l.component = ${key})
    union all
    select r.key, r.name, true, r.name_key collate "C" from recipe r where r.variant_of = ${key}
    order by by_name, key`.execute(db);
  const of = (variant: boolean) =>
    rows.filter((row) => row.variant === variant).map(({ key, name }) => ({ key, name }));
  return { usedIn: of(false), variants: of(true) };
};
