import type { EntityOf } from '../core/facts/facts.js';
import type { Ingredient } from '../core/facts/ingredient.js';
import type { Recipe } from '../core/facts/recipe.js';
import { load } from './documents.js';
import type { Db } from './schema.js';

/** The documents that sheets need by the hundred. */
export type Bulk = 'recipe' | 'ingredient';

/** What the database says stands under a key now. */
export type Version = { key: string; version: string };

/** Recipes with all below them, by key and sorted by it. */
export type Below = { recipes: ReadonlyMap<string, Recipe>; ingredients: ReadonlyMap<string, Ingredient> };

type Kept<N extends Bulk> = { doc: EntityOf[N]; version: string; snapshot: string | null };
type Memory = { [N in Bulk]: Map<string, Kept<N>> };

// Whole kitchens fit; what was kept first goes first.
const most = 10_000;

// A transaction shares its database's adapter, and no other database has it.
const memories = new WeakMap<object, Memory>();

const memoryOf = (db: Db): Memory => {
  const { adapter } = db.getExecutor();
  const memory = memories.get(adapter) ?? { recipe: new Map(), ingredient: new Map() };
  memories.set(adapter, memory);
  return memory;
};

/**
 * Recipes with their components and ingredients through any depth, if all of them were found to stand in this very
 * snapshot of the database. Snapshots that are the same show the same rows, so nothing need be asked again.
 */
export const keptBelow = (db: Db, keys: readonly string[], snapshot: string | null): Below | undefined => {
  const memory = memoryOf(db);
  const recipes = new Map<string, Recipe>();
  const ingredients = new Map<string, Ingredient>();
  const take = <N extends Bulk>(entity: N, key: string): EntityOf[N] | undefined => {
    const kept = memory[entity].get(key) as Kept<N> | undefined;
    return kept?.snapshot === snapshot ? kept.doc : undefined;
  };
  const withRecipe = (key: string): boolean => {
    if (recipes.has(key)) return true;
    const recipe = take('recipe', key);
    if (!recipe) return false;
    recipes.set(key, recipe);
    return recipe.lines.every(({ item }) =>
      'component' in item ? withRecipe(item.component) : withIngredient(item.ingredient),
    );
  };
  const withIngredient = (key: string): boolean => {
    const ingredient = ingredients.get(key) ?? take('ingredient', key);
    if (ingredient) ingredients.set(key, ingredient);
    return ingredient !== undefined;
  };
  const all = snapshot !== null && keys.every(withRecipe);
  return all ? { recipes: byKeys(recipes), ingredients: byKeys(ingredients) } : undefined;
};

/**
 * Documents of the versions that the database has just named, by key and sorted by it, of each pack the latest price
 * alone. One read before is taken from memory where it is the very version named, so a save is seen at once, whoever
 * made it. They are shared, so they are frozen.
 */
export const loadKept = async <N extends Bulk>(
  db: Db,
  entity: N,
  named: readonly Version[],
  snapshot: string | null = null,
): Promise<ReadonlyMap<string, EntityOf[N]>> => {
  const memory = memoryOf(db)[entity] as Map<string, Kept<N>>;
  const docs = new Map<string, EntityOf[N]>();
  const missing: string[] = [];
  for (const { key, version } of named) {
    const kept = memory.get(key);
    if (kept?.version !== version) missing.push(key);
    else {
      kept.snapshot = snapshot;
      docs.set(key, kept.doc);
    }
  }
  for (const { key, doc, version } of await load(db, entity, { keys: missing, latestPrices: true })) {
    docs.set(key, frozen(doc));
    memory.delete(key);
    memory.set(key, { doc, version, snapshot });
  }
  forget(memory);
  return byKeys(docs);
};

const forget = (memory: Map<string, unknown>): void => {
  for (const key of memory.keys()) {
    if (memory.size <= most) return;
    memory.delete(key);
  }
};

const byKeys = <T>(map: ReadonlyMap<string, T>): Map<string, T> =>
  new Map([...map].sort(([a], [b]) => (a < b ? -1 : 1)));

const frozen = <T>(value: T): T => {
  if (typeof value === 'object' && value !== null)
    for (const one of Object.values(Object.freeze(value))) frozen(one);
  return value;
};
