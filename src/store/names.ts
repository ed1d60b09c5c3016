import type { Db } from './schema.js';

export type Named = { key: string; name: string; archived: boolean };

/** What the lines of a recipe may name: every ingredient and every recipe, archived ones too, in no order. */
export const namesOf = async (db: Db): Promise<{ ingredients: Named[]; recipes: Named[] }> => {
  const of = (table: 'ingredient' | 'recipe') =>
    db
      .selectFrom(table)
      .select((eb) => ['key', 'name', eb('archived_at', 'is not', null).as('archived')])
      .execute() as Promise<Named[]>;
  return { ingredients: await of('ingredient'), recipes: await of('recipe') };
};

/** The sections ingredients stand in, each once, in no order. */
export const sectionsOf = async (db: Db): Promise<string[]> => {
  const rows = await db
    .selectFrom('ingredient')
    .select('section')
    .where('section', '<>', '')
    .groupBy('section')
    .execute();
  return rows.map(({ section }) => section);
};
