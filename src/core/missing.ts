import { listOf } from './allergens.js';
import { packPrice } from './costing.js';
import type { Facts } from './facts/facts.js';
import type { Ingredient } from './facts/ingredient.js';
import { labelState } from './label.js';
import type { Problem } from './problem.js';
import { labelOpen, missingFact } from './problems.js';
import { exact } from './quantity/amount.js';

/**
 * What is not known of an ingredient that sheets will ask for: its label, its price and its edible yield. One that is
 * not bought has neither price nor yield to know.
 */
export const missingOf = (ingredient: Ingredient, facts: Pick<Facts, 'kitchen'>): Problem[] => {
  const problems: Problem[] = [];
  const list = listOf(facts.kitchen);
  const { unknown } = labelState(ingredient, list);
  if (unknown > 0) problems.push(labelOpen(ingredient, unknown, list.items.length));
  if (ingredient.notBought) return problems;
  const priced = packPrice(ingredient, facts as Facts);
  if ('sentence' in priced) problems.push(priced);
  const { edibleYield } = ingredient;
  if (!edibleYield || exact(edibleYield.yield).isZero)
    problems.push(missingFact(ingredient, { missing: 'yield', unit: 'g' }));
  return problems;
};
