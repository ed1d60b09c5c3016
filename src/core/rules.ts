import type { EntityName, EntityOf } from './facts/facts.js';
import { pageKeys } from './keys.js';
import type { Known } from './known.js';
import type { Problem } from './problem.js';
import { eventRules } from './rules/event.js';
import { ingredientRules } from './rules/ingredient.js';
import { kitchenRules, placeRules } from './rules/kitchen.js';
import { recipeRules } from './rules/recipe.js';
import { keepable, type Refuse, refuser } from './rules/refuse.js';

export { normalName } from './names.js';

type Rules = { [N in EntityName]: (doc: EntityOf[N], known: Known, refuse: Refuse) => void };

const rules: Rules = {
  kitchen: kitchenRules,
  place: placeRules,
  ingredient: ingredientRules,
  recipe: recipeRules,
  event: eventRules,
};

/**
 * Why a document of the right shape cannot be saved as it is; none when it can. Each problem's field is a path of
 * field names and keys, such as "lines/l3/amount".
 */
export const refusals = <N extends EntityName>(entity: N, doc: EntityOf[N], known: Known): Problem[] => {
  const { problems, refuse } = refuser(entity, doc);
  if ('key' in doc && pageKeys.has(doc.key))
    refuse('key', 'key-new', `The key "${doc.key}" is taken by a page of that address: choose another.`);
  (rules[entity] as Rules[N])(doc, known, refuse);
  keepable(doc, '', refuse);
  return problems;
};
