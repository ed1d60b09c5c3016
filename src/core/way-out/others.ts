import type { Course, Event, Guest } from '../facts/event.js';
import type { Facts } from '../facts/facts.js';
import type { Recipe } from '../facts/recipe.js';
import { eats } from './lacking.js';

/** How often each recipe stood in a course of which name, in lower case, at any event. */
export type StoodIn = ReadonlyMap<string, ReadonlyMap<string, number>>;

// The dishes that serve most tell; a library has hundreds that serve one guest.
const most = 12;
// A search that is to be quick looks at those that stood there most often.
const mostLike = 60;

/**
 * Dishes of the library that would do in a course, whoever eats them: made in portions, no component of another, and
 * such as stood in a course of that name before; where none did, all that stood in no other course of this event's.
 * Those that stood most often first, and no more than sixty.
 */
export const dishesLike = (course: Course, { courses }: Event, facts: Facts, stoodIn: StoodIn): Recipe[] => {
  const there = new Set(course.dishes.map(({ recipe }) => recipe));
  const components = componentsIn(facts);
  const dishes = [...facts.recipes.values()].filter(
    (one) => !one.archived && one.yield.portions !== null && !there.has(one.key) && !components.has(one.key),
  );
  const times = (one: Recipe, { name }: Course) => stoodIn.get(one.key)?.get(name.toLowerCase()) ?? 0;
  const such = dishes.filter((one) => times(one, course) > 0);
  const like =
    such.length > 0 ? such : dishes.filter((one) => courses.every((other) => times(one, other) === 0));
  return like
    .sort((a, b) => times(b, course) - times(a, course) || (a.key < b.key ? -1 : 1))
    .slice(0, mostLike);
};

/** Those of them that some of these guests can eat: what feeds the most kinds of guests first, then by key. */
export const othersFor = (
  course: Course,
  event: Event,
  guests: readonly Guest[],
  facts: Facts,
  stoodIn: StoodIn,
): Recipe[] =>
  dishesLike(course, event, facts, stoodIn)
    .map((recipe) => ({ recipe, feeds: guests.filter((guest) => eats(guest, recipe, facts)).length }))
    .filter(({ feeds }) => feeds > 0)
    .sort((a, b) => b.feeds - a.feeds || (a.recipe.key < b.recipe.key ? -1 : 1))
    .slice(0, most)
    .map(({ recipe }) => recipe);

const componentsIn = ({ recipes }: Facts): Set<string> =>
  new Set(
    [...recipes.values()].flatMap(({ lines }) =>
      lines.flatMap(({ item }) => ('component' in item ? [item.component] : [])),
    ),
  );
