import type { Event } from '../core/facts/event.js';
import type { Facts } from '../core/facts/facts.js';
import type { Ingredient } from '../core/facts/ingredient.js';
import type { Recipe } from '../core/facts/recipe.js';
import { load } from './documents.js';
import { consistently, loadFacts } from './facts.js';
import type { Db } from './schema.js';

/** The facts as they stand and as they would with an unsaved recipe, with the events that would feel it. */
export type Draft = { events: Event[]; before: Facts; after: Facts };

/**
 * What an unsaved recipe would be calculated from, `added` being ingredients that are new with it; events of these keys
 * in their order. undefined while there is no kitchen.
 */
export const draftOf = (
  db: Db,
  recipe: Recipe,
  { added, events: keys }: { added: readonly Ingredient[]; events: readonly string[] },
): Promise<Draft | undefined> =>
  consistently(db, async (trx) => {
    const found = new Map((await load(trx, 'event', { keys })).map(({ key, doc }) => [key, doc]));
    const events = keys.flatMap((key) => found.get(key) ?? []);
    const named = recipe.lines.map(({ item }) => item);
    const before = await loadFacts(trx, {
      recipes: [
        recipe.key,
        ...named.flatMap((item) => ('component' in item ? [item.component] : [])),
        ...events.flatMap(({ courses }) =>
          courses.flatMap(({ dishes }) => dishes.map((dish) => dish.recipe)),
        ),
      ],
      places: events.map(({ place }) => place),
    });
    if (!before) return undefined;
    const missing = named.flatMap((item) =>
      'ingredient' in item && !before.ingredients.has(item.ingredient) ? [item.ingredient] : [],
    );
    const more = await load(trx, 'ingredient', { keys: [...new Set(missing)], latestPrices: true });
    const after: Facts = {
      ...before,
      recipes: new Map([...before.recipes, [recipe.key, recipe]]),
      ingredients: new Map([
        ...before.ingredients,
        ...[...more.map(({ doc }) => doc), ...added].map((one) => [one.key, one] as const),
      ]),
    };
    return { events, before, after };
  });
