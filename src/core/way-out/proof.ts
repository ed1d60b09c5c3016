import { type Coverage, coverageOf } from '../coverage.js';
import type { Event } from '../facts/event.js';
import { byKey, type Facts } from '../facts/facts.js';
import type { Recipe } from '../facts/recipe.js';

/** Who has something for sure in which course, with portions that reach: "priya starter" and the like. */
type Standing = ReadonlyMap<string, boolean>;

const standingOf = ({ rows }: Coverage): Standing =>
  new Map(
    rows.flatMap(({ guest, courses }) =>
      courses.map(
        ({ course, byDiets, short }) => [`${guest?.key} ${course}`, byDiets === 'yes' && !short] as const,
      ),
    ),
  );

/**
 * Checks changed menus of an event by the sheet of who can eat what, which knows nothing of how a change was found:
 * what is wrong with one, in sentences for us. Empty where every guest named has something for sure, with portions that
 * reach, and nobody has less than before. Whom nothing serves, as "priya starter", is named elsewhere and takes nothing
 * that is kept for others. Courses that come up again are judged once.
 */
export const prover = (event: Event, before: Coverage, nothing: ReadonlySet<string>, facts: Facts) => {
  const was = standingOf(before);
  const courseMark = ({ key, dishes }: Event['courses'][number]) => JSON.stringify([key, dishes]);
  const unchanged = new Set(event.courses.map(courseMark));
  const judged = new Map<string, Standing>();
  return (
    after: Event,
    recipes: readonly Recipe[],
    fed: readonly { guest: string; course: string }[],
  ): string[] => {
    const known = { ...facts, recipes: new Map([...facts.recipes, ...byKey(recipes)]) };
    const is = new Map(was);
    for (const course of after.courses) {
      const mark = courseMark(course);
      if (unchanged.has(mark)) continue;
      const guests = after.guests.filter(({ key }) => !nothing.has(`${key} ${course.key}`));
      const alone = { ...after, guests, courses: [course] };
      const standing = judged.get(mark) ?? standingOf(coverageOf(alone, known));
      judged.set(mark, standing);
      for (const [guest, has] of standing) is.set(guest, has);
    }
    const faults = fed
      .map(({ guest, course }) => `${guest} ${course}`)
      .filter((mark) => is.get(mark) !== true)
      .map((mark) => `${mark} has nothing for sure`);
    for (const [mark, had] of was) if (had && !is.get(mark)) faults.push(`${mark} has less than before`);
    return faults;
  };
};
