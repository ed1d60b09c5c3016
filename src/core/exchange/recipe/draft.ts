import type { Measure } from '../../facts/common.js';
import type { LineReading } from '../lines/reading.js';
import type { StepReading } from '../method/read-method.js';

/** What a recipe says it makes. */
export type YieldReading = {
  /** As the source words it; empty when it says nothing. */
  text: string;
  portions: string | null;
  /** The end of "Serves 4–6". */
  portionsTo: string | null;
  /** True when the portions are pieces: "Makes 12 rolls". */
  byPiece: boolean;
  weight: Measure | null;
  volume: Measure | null;
};

/** Times as the source states them, in whole minutes; null where it states none. */
export type Times = { prep: number | null; cook: number | null; total: number | null };

/** Lines under one heading; the first section may have none. */
export type Section = { title: string; lines: { text: string; read: LineReading }[] };

/** Where a draft was read from: recipe data of a page, marked-up text of a page, words of a page, or plain text. */
export type Source = 'json-ld' | 'microdata' | 'page' | 'text';

/** A recipe as it was read; nothing of it is kept until the cook says so. */
export type RecipeDraft = {
  name: string;
  source: Source;
  yield: YieldReading;
  times: Times;
  sections: Section[];
  steps: StepReading[];
  note: string;
  /** What is in doubt about the whole, a sentence each; lines and steps carry their own. */
  unsure: string[];
};

/** The drafts a text held, or why it was not read. */
export type RecipesRead = { drafts: RecipeDraft[] } | { sentence: string };
