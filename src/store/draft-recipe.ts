import { type Built, withWeight } from '../core/exchange/draft/build.js';
import { read } from './documents.js';
import { becomes } from './drafts.js';
import { type Gone, gone, type Outcome, type Refused } from './outcome.js';
import { withNewIngredients } from './recipe-save.js';
import type { Saving } from './rows.js';
import { add, put } from './saves.js';
import type { Db, Trx } from './schema.js';

/** Refused with what is wrong and in which of the recipes; gone when somebody saved the draft since. */
export type Made = Outcome<'recipe'>;

/**
 * Makes what a draft was confirmed to be: its recipe, components, new ingredients and new weights of others, all of
 * them or none. Each is a save of its own in the history.
 */
export const makeRecipe = (
  db: Db,
  draft: { id: number; revision: number },
  { recipe, components, ingredients, weights }: Built,
  by: Saving,
): Promise<Made> =>
  withNewIngredients(db, ingredients, by, async (trx) => {
    if (!(await becomes(trx, draft, recipe.key))) return gone;
    for (const { ingredient, weight } of weights) {
      const refused = await weigh(trx, ingredient, weight, by);
      if (refused) return refused;
    }
    for (const component of components) {
      const added = await add(trx, 'recipe', component, by);
      if (added.outcome !== 'saved') return added;
    }
    return add(trx, 'recipe', recipe, by);
  });

/** Why a weight cannot be kept; undefined when it is. */
const weigh = async (
  trx: Trx,
  key: string,
  weight: Built['weights'][number]['weight'],
  by: Saving,
): Promise<Refused | Gone | undefined> => {
  const stored = await read(trx, 'ingredient', key);
  if (!stored) return gone;
  const weights = withWeight(stored.doc.weights, weight);
  const outcome = await put(trx, 'ingredient', stored, { ...stored.doc, weights }, by);
  return outcome.outcome === 'refused' ? outcome : undefined;
};
