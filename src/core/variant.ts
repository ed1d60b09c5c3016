import type { Line, Recipe, Step } from './facts/recipe.js';
import { same } from './merge.js';

/** What differs between a row of the base and of the variant; absent on the side that lacks it. */
export type Difference<T> = { was: T | undefined; is: T | undefined };

export type Differences = {
  lines: Difference<Line>[];
  steps: Difference<Step>[];
  /** Other fields that differ, by their names. */
  fields: ('yield' | 'byPiece' | 'cookingLoss' | 'cup' | 'keepingDays')[];
};

const fields = ['yield', 'byPiece', 'cookingLoss', 'cup', 'keepingDays'] as const;

/** What a variant does otherwise than its base, in the variant's order; what only the base has comes last. */
export const differences = (base: Recipe, variant: Recipe): Differences => ({
  lines: rows(base.lines, variant.lines),
  steps: rows(base.steps, variant.steps),
  fields: fields.filter((field) => !same(base[field], variant[field])),
});

const rows = <T extends { key: string }>(was: readonly T[], is: readonly T[]): Difference<T>[] => {
  const old = new Map(was.map((row) => [row.key, row]));
  const found: Difference<T>[] = [];
  for (const row of is) {
    const before = old.get(row.key);
    old.delete(row.key);
    if (!before || !same(before, row)) found.push({ was: before, is: row });
  }
  return [...found, ...[...old.values()].map((row) => ({ was: row, is: undefined }))];
};

/** A copy of a recipe as its variant, under a name and a key of its own. */
export const variantOf = (base: Recipe, key: string, name: string): Recipe => ({
  ...base,
  key,
  name,
  variantOf: base.key,
  archived: false,
  origin: 'own',
});
