import { isMeasuredUnit, isWeight } from './measures.js';
import type { LineReading } from './reading.js';
import { losesWeight } from './words.js';

type Stated = { stated: LineReading['stated']; because: string[] };

const usual: Stated = { stated: 'usual', because: [] };

const loses = (note: string): string | undefined =>
  note
    .toLowerCase()
    .split(/[^\p{L}-]+/u)
    .find((word) => losesWeight.has(word));

const isCooked = (note: string): boolean => /\b(?:cooked|boiled|steamed|poached)\b/i.test(note);

/** A cup of cooked rice is a third of a cup as bought. */
const ofCooked: Stated = {
  stated: 'usual',
  because: ['It is measured once cooked; what this kitchen knows of a measure is of it as it is bought.'],
};

/**
 * Which weight an amount states. Only a weight of what loses weight when it is readied is in question: words before
 * the food speak for the prepared weight, words after it for the bought one, and "weight" in the note settles it.
 */
export const statedOf = (
  unit: string | null,
  before: readonly string[],
  after: readonly string[],
): Stated => {
  if (!isWeight(unit)) return isMeasuredUnit(unit) && before.some(isCooked) ? ofCooked : usual;
  const all = [...before, ...after].join(', ');
  if (
    /\b(?:unprepared|untrimmed|unpeeled|gross|before)\b[^,]*\bweight\b|\bweight\b[^,]*\bbefore\b/i.test(all)
  )
    return { stated: 'bought', because: [] };
  if (/\bweight\b/i.test(all) && (loses(all) || /\bprepared\b/i.test(all)))
    return { stated: 'prepared', because: [] };
  const first = loses(before.join(', '));
  if (first)
    return {
      stated: 'prepared',
      because: [`The weight is read as ${first}; only the order of the words says so.`],
    };
  const last = loses(after.join(', '));
  if (last)
    return {
      stated: 'bought',
      because: [`The weight is read as bought, before it is ${last}; only the order of the words says so.`],
    };
  return usual;
};
