import { coverageOf } from '../coverage.js';
import type { Event } from '../facts/event.js';
import { byKey, type Facts } from '../facts/facts.js';
import type { Recipe } from '../facts/recipe.js';

/**
 * What is wrong with a changed menu, in sentences for us: the event is judged again from the changed menu and the
 * recipes alone, by the sheet of who can eat what, which knows nothing of how the change was found. Empty where every
 * guest named has something for sure, with portions that reach, and nobody has less than before.
 */
export const faultsOfMenu = (
  before: Event,
  after: Event,
  recipes: readonly Recipe[],
  fed: readonly { guest: string; course: string }[],
  facts: Facts,
): string[] => {
  const known = { ...facts, recipes: new Map([...facts.recipes, ...byKey(recipes)]) };
  const was = standing(before, facts);
  const is = standing(after, known);
  const faults = fed
    .map(({ guest, course }) => `${guest} ${course}`)
    .filter((mark) => is.get(mark) !== true)
    .map((mark) => `${mark} has nothing for sure`);
  for (const [mark, had] of was) if (had && !is.get(mark)) faults.push(`${mark} has less than before`);
  return faults;
};

const standing = (event: Event, facts: Facts): Map<string, boolean> =>
  new Map(
    coverageOf(event, facts).rows.flatMap(({ guest, courses }) =>
      courses.map(
        ({ course, byDiets, short }) => [`${guest?.key} ${course}`, byDiets === 'yes' && !short] as const,
      ),
    ),
  );
