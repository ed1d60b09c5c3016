import { minorDigits } from '../money.js';
import type { Problem } from '../problem.js';
import { Rational } from '../quantity/rational.js';

export type Column = { key: string; label: string; unit?: string };
export type Table = { name: string; title: string; columns: Column[]; rows: Record<string, string>[] };

/** A sheet as plain tables: what its CSV and JSON hold. Figures are exact text; the unit stands in or beside its column. */
export type Sheet = {
  sheet: string;
  title: string;
  about: Record<string, string>;
  /** Written out when they are read: a page shows the rest of a sheet and draws its rows itself. */
  tables: Table[];
  problems: Problem[];
  /** Conventions that shaped the figures, and the cautions of the trade. */
  foot: string[];
};

/** Whole minor units as decimal text in the currency's digits: 1336 in GBP is "13.36". */
export const decimalMoney = (minor: number, currency: string): string => {
  const digits = minorDigits(currency);
  return Rational.of(minor, 10 ** digits).toFixed(digits);
};

export const conventions = {
  portions:
    'Portions: guests of each group × their portion factor × the share who eat it × over-catering; whole only where a dish goes by the piece.',
  weights:
    'A weight or volume is the prepared (edible) amount and a count is pieces as bought, unless the line says otherwise.',
  pieces: 'Whole pieces are rounded up once for each dish and event.',
  components: 'A component is taken in the exact amount used, not in whole batches.',
  prices:
    'Each line costs what it uses, at the preferred pack’s latest price; lines add up to the total to the penny.',
  minutes: 'Minutes are as written in the recipe, whatever the amount.',
  order: 'Jobs stand so that they can be worked from the top down.',
  ahead:
    'A step is listed as many days ahead as the recipe allows; a component counts back from what uses it.',
} as const;

export const cautions = {
  allergens:
    'Repeats what labels and the cook say; it does not test food. Made in a shared home kitchen, traces are possible. Check your local allergen law and take qualified advice.',
  guests:
    'What guests eat is private: keep this sheet in the kitchen, give it to no client, and destroy it after the party.',
  keeping: 'Use-by days are the ones you set. Chill, store and reheat by your local food-safety code.',
} as const;
