import { allergensOf, type Cell } from '../allergens.js';
import { costOfEvent, type DishCost, type EventCost } from '../costing.js';
import type { Event } from '../facts/event.js';
import { type Facts, factsOf } from '../facts/facts.js';
import type { Recipe } from '../facts/recipe.js';
import { isFlag } from '../line-problems.js';
import type { Answer, Problem } from '../problem.js';
import type { Rational } from '../quantity/rational.js';
import type { Quantity } from '../quantity/units.js';
import { worstFirst } from '../requirements.js';
import type { RecipeNeed } from '../scaling.js';
import { type IngredientUse, ingredientUses } from './costing.js';

/** A recipe used in the dishes of the events, with all its uses together; undefined figures wait for a fact. */
export type ComponentUse = {
  recipe: Recipe;
  batches: Rational | undefined;
  makes: Quantity | undefined;
  events: Event[];
};

export type EventNeeds = { event: Event; cost: EventCost; dishes: { dish: DishCost; allergens: Cell[] }[] };

export type Needs = {
  facts: Facts;
  events: EventNeeds[];
  components: ComponentUse[];
  ingredients: IngredientUse[];
  /** Minor units: the events' totals together; only what is known where not complete. */
  total: number;
  complete: boolean;
};

/**
 * What a set of events needs together: each event's dishes with their portions, costs and allergens, every component
 * and every ingredient through any depth, prepared and as purchased, exact. The ingredients' costs add up to the total.
 */
export const needsOf = (events: readonly Event[], today: Facts): Answer<Needs> => {
  const problems: Problem[] = [];
  const each = events.map((event) => {
    const facts = factsOf(event, today);
    const { value: cost, problems: found } = costOfEvent(event, facts);
    problems.push(...found);
    const dishes = cost.courses
      .flatMap((course) => course.dishes)
      .map((dish) => ({ dish, allergens: allergensOf(dish.need.recipe, facts) }));
    return { event, cost, dishes };
  });
  const total = each.reduce((sum, { cost }) => sum + cost.total, 0);
  const courses = each.flatMap(({ cost }) => cost.courses);
  const ingredients = ingredientUses({ courses, total }, today);
  const complete = each.every(({ cost }) => cost.complete);
  const value = { facts: today, events: each, components: componentsOf(each), ingredients, total, complete };
  return { value, problems: worstFirst(problems.filter((problem) => !isFlag(problem))) };
};

const componentsOf = (events: readonly EventNeeds[]): ComponentUse[] => {
  const uses = new Map<string, ComponentUse>();
  for (const { event, dishes } of events)
    for (const need of dishes.flatMap(({ dish }) => dish.need.recipes.slice(1))) {
      const before = uses.get(need.recipe.key);
      const batches = before
        ? before.batches && need.factor && before.batches.plus(need.factor)
        : need.factor;
      const among = new Set([...(before?.events ?? []), event]);
      uses.set(need.recipe.key, {
        recipe: need.recipe,
        batches,
        makes: batches && madeOf(need, batches),
        events: [...among],
      });
    }
  return [...uses.values()];
};

const madeOf = ({ makes }: RecipeNeed, batches: Rational): Quantity | undefined => {
  if (makes.g) return { value: makes.g.times(batches), base: 'g' };
  if (makes.ml) return { value: makes.ml.times(batches), base: 'ml' };
  return makes.portions && { value: makes.portions.times(batches), base: 'portion' };
};
