import type { Facts } from './facts/facts.js';
import type { Ingredient } from './facts/ingredient.js';
import type { Recipe } from './facts/recipe.js';

/** An ingredient by its key; facts that lack what they refer to are our own mistake, so that throws. */
export const ingredientOf = (key: string, facts: Facts): Ingredient =>
  found(facts.ingredients.get(key), 'ingredient', key);

/** A recipe by its key; a missing one throws. */
export const recipeOf = (key: string, facts: Facts): Recipe => found(facts.recipes.get(key), 'recipe', key);

const found = <T>(value: T | undefined, kind: string, key: string): T => {
  if (!value) throw new Error(`the facts have no ${kind} ${key}`);
  return value;
};

/** A calculation that is done once for each thing asked about, as long as the same facts are at hand. */
export const once = <K extends object, V>(work: (asked: K, facts: Facts) => V) => {
  const kept = new WeakMap<Facts, Map<K, V>>();
  return (asked: K, facts: Facts): V => {
    let answers = kept.get(facts);
    if (!answers) {
      answers = new Map();
      kept.set(facts, answers);
    }
    let answer = answers.get(asked);
    if (answer === undefined && !answers.has(asked)) {
      answer = work(asked, facts);
      answers.set(asked, answer);
    }
    return answer as V;
  };
};
