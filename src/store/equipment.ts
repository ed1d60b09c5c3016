import { sql } from 'kysely';
import type { Db } from './schema.js';

/** The equipment that steps name, each once, by letter. */
export const equipmentUsed = async (db: Db): Promise<string[]> => {
  const { rows } = await sql<{ name: string }>`
    select name from (select distinct jsonb_array_elements_text(equipment) as name from recipe_step) as used order by name collate "C" limit 200`.execute(
    db,
  );
  return rows.map(({ name }) => name);
};
