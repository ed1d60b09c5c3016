import type { Recipe } from '../../../src/core/facts/recipe.js';
import { read } from '../../../src/store/documents.js';
import type { Db } from '../../../src/store/schema.js';

export const readRecipe = async (db: Db, key: string): Promise<Recipe | undefined> =>
  (await read(db, 'recipe', key))?.doc;
