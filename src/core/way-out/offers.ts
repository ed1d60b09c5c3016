import { costOf } from '../costing.js';
import { mindsTraces } from '../diet-list.js';
import { dietOf, judgeRecipe, type Verdict } from '../diets.js';
import type { Course, Dish, Event, Guest } from '../facts/event.js';
import type { Facts } from '../facts/facts.js';
import type { Recipe } from '../facts/recipe.js';
import { recipeOf } from '../lookup.js';
import { exact } from '../quantity/amount.js';
import { Rational } from '../quantity/rational.js';
import { dishNeed, eatersOf } from '../requirements.js';
import { closureOf } from '../scaling.js';
import { eats } from './lacking.js';
import type { Treatment } from './treat.js';

/**
 * What can be put before guests in a course: a dish of the menu as it is where portions are few, kept back for them,
 * made for more; a variant of it from the library or made for the purpose; or another dish of the library.
 */
export type Offering = {
  kind: 'as-is' | 'kept' | 'more' | 'variant' | 'made' | 'other';
  course: Course;
  /** The dish of the menu that it is, or that it stands in for; undefined where it is beside all of them. */
  dish: Dish | undefined;
  recipe: Recipe;
  components: Recipe[];
  treatments: Treatment[];
  /** The guest group whose portions it is, where it is those that are there. */
  group?: string;
};

export const isNew = ({ kind }: Offering): boolean =>
  kind === 'variant' || kind === 'made' || kind === 'other';

/** Whether a dish is made for a group at all. */
export const isFor = (dish: Dish, group: string, event: Event): boolean =>
  !(eatersOf(dish.eaters, event).get(group)?.isZero ?? true);

/**
 * The dish whose portion a guest no longer takes when given an offering instead: the one it stands in for, else the
 * only dish of the course that is made for them; and only where it is made for all of their group, so that theirs is
 * among its portions, and they could not eat of it.
 */
export const insteadOf = (offering: Offering, guest: Guest, event: Event, facts: Facts): Dish | undefined => {
  if (!isNew(offering)) return undefined;
  const there = offering.course.dishes.filter((dish) => isFor(dish, guest.group, event));
  const dish = offering.dish ?? (there.length === 1 ? there[0] : undefined);
  if (!dish || !isForAll(dish, guest.group, event)) return undefined;
  return eats(guest, recipeOf(dish.recipe, facts), facts) ? undefined : dish;
};

const isForAll = (dish: Dish, group: string, event: Event): boolean => {
  const { guests } = event.groups.find(({ key }) => key === group)!;
  return (eatersOf(dish.eaters, event).get(group)?.compare(Rational.of(guests)) ?? -1) >= 0;
};

const rank: Record<Verdict, number> = { yes: 0, may: 1, unknown: 2, no: 3 };

/** Whether two guests eat at one table, or may: where either's table is not said, all of a course share it. */
export const shareTable = (a: Guest, b: Guest): boolean =>
  a.key !== b.key && (a.table === '' || b.table === '' || a.table === b.table);

/**
 * The guests to whom an offering brings what they are allergic to: it stands worse with one of their allergies than the
 * dish it is made from, or, where it is another dish, than every dish of the course. That they cannot eat that dish for
 * another allergy changes nothing. It is none for whoever shares a table with one of them.
 */
export const harmedBy = (offering: Offering, event: Event, facts: Facts): Guest[] => {
  if (!isNew(offering)) return [];
  const { dish, course, recipe } = offering;
  const beside = (dish ? [dish] : course.dishes).map((one) => recipeOf(one.recipe, facts));
  const worse = (id: string): boolean => {
    const standing = (one: Recipe) => rank[judgeRecipe([id], one, facts).verdict];
    return standing(recipe) > Math.max(...beside.map(standing));
  };
  return event.guests.filter(({ diets }) =>
    diets.some((id) => {
      const diet = dietOf(id, facts.kitchen);
      return (!diet || mindsTraces(diet)) && worse(id);
    }),
  );
};

/** A dish of an offering for so many of each group, plated for them. */
export const dishFor = (
  { recipe, dish, kind }: Offering,
  key: string,
  counts: ReadonlyMap<string, number>,
  keptFor: string[],
): Dish => ({
  key,
  recipe: recipe.key,
  portion: kind === 'other' ? null : (dish?.portion ?? null),
  eaters: { counts: [...counts].map(([group, guests]) => ({ group, guests })) },
  service: 'plated',
  keptApart: '',
  keptFor,
  price: null,
});

const hundred = Rational.of(100);

/**
 * What one portion of a dish costs, in minor units, exact, when made for so many of each group; undefined where a
 * price or a weight is missing.
 */
export const portionCost = (
  dish: Dish,
  counts: ReadonlyMap<string, number>,
  event: Event,
  facts: Facts,
): Rational | undefined => {
  const made: Dish = {
    ...dish,
    eaters: { counts: [...counts].map(([group, guests]) => ({ group, guests })) },
  };
  const portions = [...counts].reduce(
    (sum, [group, guests]) => sum.plus(factorOf(group, event).times(Rational.of(guests))),
    Rational.zero,
  );
  const [cost] = costOf(dishNeed(made, event, facts).recipes, facts).value;
  return cost?.complete && !portions.isZero ? cost.cost.over(portions) : undefined;
};

export const factorOf = (group: string, event: Event): Rational =>
  exact(event.groups.find(({ key }) => key === group)!.portion);

/** Minor units as hundredths of them, whole. */
export const inHundredths = (cost: Rational): number => Number(cost.times(hundred).round());

/** Attended minutes of an offering that the event does not have anyway; steps whose minutes are not known count none. */
export const extraWork = (offering: Offering, event: Event, facts: Facts): number => {
  if (!isNew(offering)) return 0;
  const there = event.courses.flatMap(({ dishes }) => dishes.map(({ recipe }) => recipeOf(recipe, facts)));
  const made = new Set(there.flatMap((recipe) => closureOf(recipe, facts)).map(({ key }) => key));
  return closureOf(offering.recipe, facts)
    .filter(({ key }) => !made.has(key))
    .flatMap(({ steps }) => steps)
    .reduce((sum, { attended, minutes }) => sum + (attended ? (minutes ?? 0) : 0), 0);
};
