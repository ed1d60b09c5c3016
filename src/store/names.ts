import type { Db } from './schema.js';

export type Named = { key: string; name: string; archived: boolean };

/** What the lines of a recipe may name: every ingredient and every recipe, archived ones too, by key. */
export const namesOf = async (db: Db): Promise<{ ingredients: Named[]; recipes: Named[] }> => {
  const of = (table: 'ingredient' | 'recipe') =>
    db
      .selectFrom(table)
      .select((eb) => ['key', 'name', eb('archived_at', 'is not', null).as('archived')])
      .orderBy('key')
      .execute() as Promise<Named[]>;
  return { ingredients: await of('ingredient'), recipes: await of('recipe') };
};

/** The sections ingredients stand in, each once. */
export const sectionsOf = async (db: Db): Promise<string[]> => {
  const rows = await db
    .selectFrom('ingredient')
    .select('section')
    .where('section', '<>', '')
    .groupBy('section')
    .orderBy('section')
    .execute();
  return rows.map(({ section }) => section);
};
