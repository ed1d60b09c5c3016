import type { Course, Event, Guest } from '../facts/event.js';
import type { Facts } from '../facts/facts.js';
import type { Recipe } from '../facts/recipe.js';
import { eats } from './lacking.js';

/** The names of the courses, in lower case, in which each recipe stood at any event. */
export type StoodIn = ReadonlyMap<string, ReadonlySet<string>>;

// The dishes that serve most tell; a library has hundreds that serve one guest.
const most = 12;

/**
 * Other dishes of the library that would do in a course for some of these guests: made in portions, no component of
 * another, and such as stood in a course of that name before; where none did, all that stood in no other course of this
 * event's. Those that feed the most kinds of guests first, then by key.
 */
export const othersFor = (
  course: Course,
  { courses }: Event,
  guests: readonly Guest[],
  facts: Facts,
  stoodIn: StoodIn,
): Recipe[] => {
  const there = new Set(course.dishes.map(({ recipe }) => recipe));
  const components = componentsIn(facts);
  const dishes = [...facts.recipes.values()].filter(
    (one) => !one.archived && one.yield.portions !== null && !there.has(one.key) && !components.has(one.key),
  );
  const stood = (one: Recipe, { name }: Course) => stoodIn.get(one.key)?.has(name.toLowerCase()) ?? false;
  const such = dishes.filter((one) => stood(one, course));
  const open = dishes.filter((one) => !courses.some((other) => stood(one, other)));
  return (such.length > 0 ? such : open)
    .map((recipe) => ({ recipe, feeds: guests.filter((guest) => eats(guest, recipe, facts)).length }))
    .filter(({ feeds }) => feeds > 0)
    .sort((a, b) => b.feeds - a.feeds || (a.recipe.key < b.recipe.key ? -1 : 1))
    .slice(0, most)
    .map(({ recipe }) => recipe);
};

const componentsIn = ({ recipes }: Facts): Set<string> =>
  new Set(
    [...recipes.values()].flatMap(({ lines }) =>
      lines.flatMap(({ item }) => ('component' in item ? [item.component] : [])),
    ),
  );
