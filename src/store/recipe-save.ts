import type { Ingredient } from '../core/facts/ingredient.js';
import type { Outcome } from './outcome.js';
import type { Saving } from './rows.js';
import { add, saving } from './saves.js';
import type { Db, Trx } from './schema.js';

class Undone extends Error {
  constructor(readonly outcome: Outcome<'recipe'>) {
    super('a recipe was not saved');
  }
}

/** Saves a recipe together with ingredients that it is the first to name: all of them, or, when refused, none. */
export const withNewIngredients = async (
  db: Db,
  ingredients: readonly Ingredient[],
  by: Saving,
  save: (trx: Trx) => Promise<Outcome<'recipe'>>,
): Promise<Outcome<'recipe'>> => {
  try {
    return await saving(db, async (trx) => {
      for (const ingredient of ingredients) {
        const added = await add(trx, 'ingredient', ingredient, by);
        if (added.outcome === 'refused') throw new Undone(added);
      }
      const outcome = await save(trx);
      // A merge that is still to be chosen names them too, so they stay for it.
      if (outcome.outcome === 'refused' || outcome.outcome === 'gone') throw new Undone(outcome);
      return outcome;
    });
  } catch (error) {
    if (error instanceof Undone) return error.outcome;
    throw error;
  }
};
