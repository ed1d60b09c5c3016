import { sql } from 'kysely';
import type { EventState } from '../core/facts/event.js';
import type { Db } from './schema.js';

/** A dish that a recipe is part of, through any depth, on the menu of an event that is not archived. */
export type DishUse = {
  event: string;
  name: string;
  date: string;
  state: EventState;
  dish: string;
  /** The recipe of the dish: the one asked about, or what uses it. */
  recipe: string;
  recipeName: string;
};

/** Every dish that a recipe goes into, from a day on, by date, event and place on the menu. */
export const dishesUsing = async (db: Db, recipe: string, from: string): Promise<DishUse[]> => {
  const { rows } = await sql<DishUse>`
    with recursive above (key) as (
      select ${recipe}::text
      union
      select r.key from above join recipe_line l on l.component = above.key join recipe r on r.id = l.recipe_id
    )
    select e.key as event, e.name, e.date, e.state, d.key as dish, d.recipe, r.name as "recipeName"
    from above join dish d on d.recipe = above.key join event e on e.id = d.event_id
    join recipe r on r.key = d.recipe
    join course c on c.event_id = e.id and c.key = d.course
    where e.archived_at is null and e.date >= ${from}::date
    order by e.date, e.key collate "C", c.position, d.position, d.key collate "C"`.execute(db);
  return rows;
};
