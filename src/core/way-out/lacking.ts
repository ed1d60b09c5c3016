import type { Coverage } from '../coverage.js';
import { judgeGuest } from '../diets.js';
import type { Course, Event, Guest } from '../facts/event.js';
import type { Facts } from '../facts/facts.js';
import type { Recipe } from '../facts/recipe.js';
import { once } from '../lookup.js';

/** Guests of one row who lack something sure in one course; `short` where only its portions do not go round. */
export type Lack = { course: Course; guest: Guest; who: string; short: boolean; open: boolean };

/** A guest by their diets alone: a wish in their own words is the cook's to judge, whatever is on the table. */
export const byDiets = (guest: Guest): Guest => (guest.other === '' ? guest : { ...guest, other: '' });

const marks = new WeakMap<Guest, string>();

/** The same for guests who eat alike. */
export const kindOf = (guest: Guest): string => {
  const { diets, avoids, traces } = guest;
  const mark = marks.get(guest) ?? JSON.stringify([diets.toSorted(), avoids.toSorted(), traces]);
  marks.set(guest, mark);
  return mark;
};

const answersOf = once((_recipe: Recipe, _facts: Facts) => new Map<string, boolean>());

/** Whether a guest can eat a recipe for sure: no caution left, nothing unread. */
export const eats = (guest: Guest, recipe: Recipe, facts: Facts): boolean => {
  const answers = answersOf(recipe, facts);
  const kind = kindOf(guest);
  const answer = answers.get(kind) ?? judgeGuest(byDiets(guest), recipe, facts).verdict === 'yes';
  answers.set(kind, answer);
  return answer;
};

/**
 * Every answered guest who has nothing for sure in a course that has dishes: nothing they can eat, only what may
 * contain what they avoid or is not fully known, or too few portions. `open` says that an unread label is in the way.
 */
export const lackingIn = (event: Event, { rows }: Coverage): Lack[] => {
  const courses = new Map(event.courses.map((course) => [course.key, course]));
  return rows.flatMap(({ guest, who, diets, courses: covers }) => {
    if (!guest?.answered || guest.diets.length + guest.avoids.length === 0) return [];
    return covers.flatMap(({ course: key, byDiets: has, short }) => {
      const course = courses.get(key)!;
      if (course.dishes.length === 0 || (has === 'yes' && !short)) return [];
      const name = guest.name && diets.length > 0 ? `${who} (${diets.join(', ')})` : who;
      return [{ course, guest, who: name, short: has === 'yes', open: has === 'unknown' }];
    });
  });
};
