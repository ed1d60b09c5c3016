import type { Coverage } from '../coverage.js';

/** Who has something for sure in which course, with portions that reach: "priya starter" and the like. */
const standingOf = ({ rows }: Coverage): Map<string, boolean> =>
  new Map(
    rows.flatMap(({ guest, courses }) =>
      courses.map(
        ({ course, byDiets, short }) => [`${guest?.key} ${course}`, byDiets === 'yes' && !short] as const,
      ),
    ),
  );

/**
 * What is wrong with a changed menu, in sentences for us, by the sheet of who can eat what before and after, which knows
 * nothing of how the change was found. Empty where every guest named has something for sure, with portions that reach,
 * and nobody has less than before.
 */
export const faultsOfMenu = (
  before: Coverage,
  after: Coverage,
  fed: readonly { guest: string; course: string }[],
): string[] => {
  const [was, is] = [standingOf(before), standingOf(after)];
  const faults = fed
    .map(({ guest, course }) => `${guest} ${course}`)
    .filter((mark) => is.get(mark) !== true)
    .map((mark) => `${mark} has nothing for sure`);
  for (const [mark, had] of was) if (had && !is.get(mark)) faults.push(`${mark} has less than before`);
  return faults;
};
