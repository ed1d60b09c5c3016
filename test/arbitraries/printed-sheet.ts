import fc from 'fast-check';
import type { PrintedLabel } from '../../src/core/facts/printed-label.js';
import { type PrintedSheet, printedSheets } from '../../src/core/facts/printed-sheet.js';
import { anyInstant } from './prep-period.js';
import { anyDate, maybe, title } from './words.js';

const hash = fc.nat().map((n) => n.toString(16).padStart(32, 'f'));

const anyLines = fc.uniqueArray(
  fc.record({
    id: hash,
    of: fc.constantFrom('head' as const, 'dish' as const, 'guest' as const),
    dish: fc.oneof(fc.constant(''), title),
    fingerprint: hash,
  }),
  { maxLength: 4, selector: ({ id }) => id },
);

/** Some papers of some events, each printed last at some time. */
export const anyPrintedSheets = (events: readonly string[]): fc.Arbitrary<PrintedSheet[]> =>
  events.length === 0
    ? fc.constant([])
    : fc.uniqueArray(
        fc.record({
          event: fc.constantFrom(...events),
          sheet: fc.constantFrom(...printedSheets),
          who: title.map((words) => words.trim()),
          at: anyInstant,
          lines: anyLines,
        }),
        { maxLength: 3, selector: ({ event, sheet }) => `${event} ${sheet}` },
      );

/** Labels of some recipes, each printed last at some time. */
export const anyPrintedLabels = (recipes: readonly string[]): fc.Arbitrary<PrintedLabel[]> =>
  fc.subarray([...recipes]).chain((some) =>
    fc.tuple(
      ...some.map((recipe) =>
        fc.record({
          recipe: fc.constant(recipe),
          who: title.map((words) => words.trim()),
          at: anyInstant,
          made: anyDate,
          useBy: maybe(anyDate),
          fingerprint: hash,
        }),
      ),
    ),
  );
