import { merge } from '../../core/merge.js';
import { inPlainWords, isTyped, placeName, standsAt } from '../describe.js';
import type { Format } from '../format.js';

/** One place of a document with what it was and became, in words. */
export type ChangedPlace = { place: string; was: string; became: string };

/** Every place in which two states of a document differ. */
export const changedPlaces = (before: object, after: object, f: Format): ChangedPlace[] =>
  merge(before, after, before)
    .yours.filter(isTyped)
    .map((path) => {
      const words = (doc: object) => {
        const value = standsAt(doc, path);
        return value === undefined ? 'not there' : inPlainWords(value, f, path.split('/').at(-1));
      };
      return { place: placeName(path, after, before), was: words(before), became: words(after) };
    });
