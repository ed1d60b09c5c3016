import { sql } from 'kysely';
import type { Ingredient } from '../core/facts/ingredient.js';
import { load } from './documents.js';
import type { Db } from './schema.js';

/** Ingredients that are bought and have a price of a later day than this, by key, with every price of every pack. */
export const repricedSince = async (db: Db, date: string): Promise<Ingredient[]> => {
  const { rows } = await sql<{ key: string }>`
    select distinct i.key from ingredient i join price p on p.ingredient_id = i.id
    where p.withdrawn_at is null and p.date > ${date}::date and i.archived_at is null and not i.not_bought`.execute(
    db,
  );
  const stored = await load(db, 'ingredient', { keys: rows.map(({ key }) => key) });
  return stored.map(({ doc }) => doc);
};
