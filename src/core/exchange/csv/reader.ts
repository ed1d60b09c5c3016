import type { z } from 'zod';
import { type EntityOf, entities } from '../../facts/facts.js';
import { misfits } from '../../shape-problems.js';
import type { Columns } from './columns.js';
import { spaced } from './nodes.js';
import type { CsvRow } from './read.js';
import type { Kept } from './tables.js';

export type Refused = { line: number; name: string; sentence: string };

/** A document of a file, the line it begins on, and what stands under its key now. */
export type Found<N extends 'ingredient' | 'recipe' = 'ingredient' | 'recipe'> = {
  line: number;
  doc: EntityOf[N];
  before: EntityOf[N] | undefined;
};
export type Documents =
  | { entity: 'ingredient'; found: Found<'ingredient'>[]; refused: Refused[] }
  | { entity: 'recipe'; found: Found<'recipe'>[]; refused: Refused[] };

/** Reads the rows of one table into documents. */
export type Reader = (
  rows: readonly CsvRow[],
  columns: Columns,
  kept: Kept,
) => Documents | { sentence: string };
export type Raw = Record<string, unknown>;

/** A document of the right shape; when it is not, each reason is noted at its line. */
export const shaped = <N extends 'ingredient' | 'recipe'>(
  entity: N,
  raw: Raw | EntityOf[N],
  lineAt: (path: readonly PropertyKey[]) => number,
  refused: Refused[],
): EntityOf[N] | undefined => {
  const schema: z.ZodType = entities[entity];
  const read = schema.safeParse(raw);
  if (read.success) return read.data as EntityOf[N];
  const name = String((raw as Raw).name ?? (raw as Raw).key ?? '');
  for (const { path, sentence } of misfits(schema, raw, read.error))
    refused.push({
      line: lineAt(path),
      name,
      sentence: `${path
        .filter((one) => typeof one === 'string')
        .map((one) => spaced(String(one)))
        .join(', ')}: ${sentence}`,
    });
  return undefined;
};
