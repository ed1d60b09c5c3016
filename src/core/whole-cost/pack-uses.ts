import { type DishCost, type EventCost, packPrice } from '../costing.js';
import type { Facts } from '../facts/facts.js';
import type { Ingredient } from '../facts/ingredient.js';
import { Rational } from '../quantity/rational.js';
import type { Quantity } from '../quantity/units.js';
import { boughtIn, isMissing } from '../weighing.js';

/** Packs that the dishes of one event use of one ingredient, exact, as far as is known. */
export type PackUse = {
  ingredient: Ingredient;
  /** What a pack costs in minor units, and what it holds. */
  each: Rational;
  size: Quantity;
  need: Rational;
  ofDishes: Map<DishCost, Rational>;
  /** false when a use of it isn't known. */
  complete: boolean;
};

/**
 * Packs of each ingredient that an event uses, by its key, all its uses together in the base of the pack; exact. What
 * isn't bought, goes in to taste or has no price takes none.
 */
export const packUses = (cost: Pick<EventCost, 'courses'>, facts: Facts): Map<string, PackUse> => {
  const uses = new Map<string, PackUse>();
  for (const dish of cost.courses.flatMap(({ dishes }) => dishes))
    for (const { need } of dish.recipes.flatMap(({ lines }) => lines)) {
      const { ingredient, line, bought } = need;
      if (!ingredient || ingredient.notBought || line.amount === null) continue;
      const use = uses.get(ingredient.key) ?? unused(ingredient, facts);
      if (!use) continue;
      uses.set(ingredient.key, use);
      const taken = bought && boughtIn(ingredient, bought, use.size.base);
      if (!taken || isMissing(taken)) use.complete = false;
      else add(use, dish, taken.over(use.size.value));
    }
  return uses;
};

const unused = (ingredient: Ingredient, facts: Facts): PackUse | undefined => {
  const pack = packPrice(ingredient, facts);
  if ('sentence' in pack) return undefined;
  const { price: each, size } = pack;
  return { ingredient, each, size, need: Rational.zero, ofDishes: new Map(), complete: true };
};

const add = (use: PackUse, dish: DishCost, packs: Rational): void => {
  use.need = use.need.plus(packs);
  use.ofDishes.set(dish, (use.ofDishes.get(dish) ?? Rational.zero).plus(packs));
};

type Packed = Pick<PackUse, 'each' | 'size'>;

/** Whether two events buy an ingredient in the same pack at the same price, so that they can buy it together. */
export const isSamePack = (a: Packed, b: Packed): boolean =>
  a.size.base === b.size.base && a.size.value.equals(b.size.value) && a.each.equals(b.each);
