import { readMoney } from '../../core/reading.js';
import type { Reading } from '../faults.js';

/** Reads sums of a form in the kitchen's currency; an empty one is not known, never nothing. */
export const sumReader =
  (reading: Reading, currency: string) =>
  (field: string, label: string): number | null =>
    reading.maybe(field, label, (typed) => readMoney(typed, currency));
