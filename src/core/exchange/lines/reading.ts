import type { Measure } from '../../facts/common.js';

/** What one line of a recipe's list was read as. */
export type LineReading = {
  /** line: a food with or without an amount; heading: opens a section; words: neither; empty: nothing there. */
  kind: 'line' | 'heading' | 'words' | 'empty';
  quantity: string | null;
  quantityTo: string | null;
  unit: string | null;
  food: string;
  note: string;
  /** The title of a heading. */
  heading: string | null;
  pack: Measure | null;
  /** Which weight the amount states, and whether the line says so or only its word order. */
  stated: 'usual' | 'prepared' | 'bought';
  sure: boolean;
  /** Why it is not sure, a sentence each. */
  because: string[];
};

export const nothingRead: LineReading = {
  kind: 'empty',
  quantity: null,
  quantityTo: null,
  unit: null,
  food: '',
  note: '',
  heading: null,
  pack: null,
  stated: 'usual',
  sure: true,
  because: [],
};
