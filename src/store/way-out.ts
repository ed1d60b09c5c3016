import type { Event } from '../core/facts/event.js';
import type { Recipe } from '../core/facts/recipe.js';
import type { Known } from '../core/known.js';
import type { Problem } from '../core/problem.js';
import { asKnown } from '../core/rules/recipe.js';
import { refusals } from '../core/rules.js';
import { read } from './documents.js';
import { knownFor } from './known.js';
import { type Gone, gone, type Refused, refused, stale } from './outcome.js';
import type { Saving } from './rows.js';
import { saving } from './saves.js';
import type { Db } from './schema.js';
import { putTogether, type SavedTogether } from './together.js';

export type TakenWayOut = ({ outcome: 'saved' } & SavedTogether) | Refused | Gone;

/**
 * Puts a way out on an event's menu: its new recipes, components first, and the event with them, all as one save that
 * one Undo takes back, or nothing. An event that was saved since the given revision is refused.
 */
export const takeWayOut = (
  db: Db,
  { event, recipes }: { event: Event; recipes: readonly Recipe[] },
  revision: number,
  by: Saving,
): Promise<TakenWayOut> =>
  saving(db, async (trx) => {
    const stored = await read(trx, 'event', event.key);
    if (!stored) return gone;
    if (stored.revision !== revision) return refused([stale('event', event.key, stored.doc.name)]);
    const problems: Problem[] = [];
    for (const recipe of recipes)
      problems.push(...refusals('recipe', recipe, withAll(await knownFor(trx, 'recipe', recipe), recipes)));
    problems.push(...refusals('event', event, withAll(await knownFor(trx, 'event', event), recipes)));
    if (problems.length > 0) return refused(problems);
    const writes = {
      recipe: recipes.map((doc) => ({ stored: undefined, doc })),
      event: [{ stored, doc: { ...event, origin: 'own' as const } }],
    };
    return { outcome: 'saved', ...(await putTogether(trx, writes, by)) };
  });

/** What the rules know, and the recipes that are saved with the document. */
const withAll = (known: Known, recipes: readonly Recipe[]): Known => ({
  ...known,
  recipes: new Map([...known.recipes, ...recipes.map((one) => [one.key, asKnown(one)] as const)]),
});
