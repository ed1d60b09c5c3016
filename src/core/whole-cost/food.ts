import type { EventCost } from '../costing.js';
import type { FoodCost } from './whole-cost.js';

export type Food = Omit<FoodCost, 'cost' | 'dishes'> & { dishes: Omit<FoodCost['dishes'][number], 'cost'>[] };

/** The food of an event as its recipes use it, each dish at its own cost; exact. */
export const usedFood = (cost: EventCost): Food => ({
  exact: cost.exact,
  complete: cost.complete,
  dishes: cost.courses.flatMap(({ dishes }) =>
    dishes.map((dish) => ({ dish, exact: dish.exact, complete: dish.complete })),
  ),
  packs: [],
});
