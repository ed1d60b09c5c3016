import type { EventCost } from '../costing.js';
import type { BuildUp } from './build-up.js';
import { type Costing, ingredientUses } from './costing.js';

/**
 * The food of a build-up by course, dish and ingredient in its view; minor units, the dishes and the ingredients each
 * adding up to the food of the build-up. Bought packs are spread over the dishes by what they use.
 */
export const foodInView = (food: Costing, { cost: whole, rungs }: BuildUp): Costing => {
  let next = 0;
  const { dishes: parts, cost: total } = whole.food;
  const courses = food.cost.courses.map((course) => ({
    ...course,
    dishes: course.dishes.map((dish) => {
      const { exact, cost, complete } = parts[next++]!;
      return { ...dish, exact, cost, complete };
    }),
  }));
  const complete = whole.food.complete;
  const cost: EventCost = { ...food.cost, courses, total, complete, aGuest: rungs[0]!.aGuest };
  return { ...food, cost, ingredients: ingredientUses(cost, food.facts) };
};
