import type { z } from 'zod';
import { type EntityOf, entities } from '../../facts/facts.js';
import type { Ingredient, Pack } from '../../facts/ingredient.js';
import { keyFrom } from '../../keys.js';
import { same } from '../../merge.js';
import { normalName } from '../../names.js';
import { misfits } from '../../shape-problems.js';
import { type Columns, columnsIn, type FieldsFrom, fieldsFrom } from './columns.js';
import { spaced } from './nodes.js';
import type { Csv, CsvRow } from './read.js';
import { inMinor, type Kept, nodes } from './tables.js';

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

/** The documents a table of ours makes, beside those that stand; or why the file as a whole can't be read. */
export const documentsIn = (csv: Csv, kept: Kept): Documents | { sentence: string } => {
  const columns = columnsIn(csv);
  if ('sentence' in columns) return columns;
  return readers[columns.table](csv.rows.slice(1), columns, kept);
};

type Reader = (rows: readonly CsvRow[], columns: Columns, kept: Kept) => Documents | { sentence: string };
type Raw = Record<string, unknown>;

const ingredients: Reader = (rows, columns, kept) => {
  const fields = fieldsFrom(nodes.ingredient, '', columns);
  if ('sentence' in fields) return fields;
  const refused: Refused[] = [];
  const there = new Map(kept.ingredients.map((one) => [one.key, one]));
  const byName = new Map(kept.ingredients.map((one) => [normalName(one.name), one.key]));
  const lines = new Map<string, number>();
  const found = rows.flatMap(({ line, cells }): Found<'ingredient'>[] => {
    const raw = fields(cells);
    const name = String(raw.name ?? '');
    const taken = (key: string) => there.has(key) || lines.has(key);
    const key = String(raw.key || byName.get(normalName(name)) || keyFrom(name, taken));
    const earlier = lines.get(key);
    if (earlier !== undefined) {
      refused.push({ line, name, sentence: `The key “${key}” stands on line ${earlier} already.` });
      return [];
    }
    lines.set(key, line);
    const before = there.get(key);
    const doc = shaped('ingredient', { ...before, ...raw, key }, () => line, refused);
    return doc ? [{ line, doc, before }] : [];
  });
  return { entity: 'ingredient', found, refused };
};

const prices: Reader = (rows, columns, kept) => {
  const [packOf, priceOf] = [
    fieldsFrom(nodes.pack, 'pack', columns),
    fieldsFrom(nodes.price, 'price', columns),
  ];
  if ('sentence' in packOf) return packOf;
  if ('sentence' in priceOf) return priceOf;
  const refused: Refused[] = [];
  const there = new Map(kept.ingredients.map((one) => [one.key, one]));
  const made = new Map<string, { line: number; doc: Ingredient; packs: Map<string, Raw> }>();
  for (const { line, cells } of rows) {
    const key = columns.cell(cells, 'ingredient').trim();
    const before = there.get(key);
    if (!before) {
      const name = columns.cell(cells, 'name') || key;
      refused.push({
        line,
        name,
        sentence: `There is no ingredient with the key “${key}”: bring ingredients.csv in first.`,
      });
      continue;
    }
    const one = made.get(key) ?? { line, doc: withKeyedPacks(before), packs: new Map<string, Raw>() };
    made.set(key, one);
    const sentence = addPrice(one, packOf(cells), priceOf(cells), kept.kitchen.currency);
    if (sentence) refused.push({ line, name: before.name, sentence });
  }
  const found = [...made].flatMap(([key, { line, doc }]): Found<'ingredient'>[] => {
    const parsed = shaped('ingredient', doc, () => line, refused);
    return parsed ? [{ line, doc: parsed, before: there.get(key) }] : [];
  });
  return { entity: 'ingredient', found, refused };
};

const withKeyedPacks = (doc: Ingredient): Ingredient => ({
  ...doc,
  packs: doc.packs.map((pack) => ({ ...pack, prices: [...pack.prices] })),
});

/** Puts one row's price into an ingredient; what is not in the file stays. A sentence when the row contradicts another. */
const addPrice = (
  { doc, packs }: { doc: Ingredient; packs: Map<string, Raw> },
  pack: Raw,
  price: Raw,
  currency: string,
): string | undefined => {
  const key = String(pack.key ?? '');
  const said = packs.get(key);
  if (said && !same(said, pack)) return `Another row says something else of the pack “${key}”.`;
  packs.set(key, pack);
  const at = doc.packs.findIndex((one) => one.key === key);
  const before = doc.packs[at];
  const now = { ...before, ...pack, prices: before?.prices ?? [] } as Pack;
  if (at < 0) doc.packs.push(now);
  else doc.packs[at] = now;
  if (Object.entries(price).every(([name, value]) => name === 'guess' || value === '' || value === undefined))
    return undefined;
  const date = String(price.date ?? '');
  const own = String(price.key || keyFrom(date, (one) => now.prices.some((other) => other.key === one)));
  const written = { ...price, key: own, price: inMinor(String(price.price ?? ''), currency) };
  const old = now.prices.findIndex((one) => one.key === own);
  if (old < 0) now.prices.push(written as never);
  else now.prices[old] = written as never;
  return undefined;
};

const recipes: Reader = (rows, columns, kept) => {
  const fields = fieldsFrom(nodes.recipe, '', columns);
  const parts = {
    line: fieldsFrom(nodes.line, 'line', columns),
    step: fieldsFrom(nodes.step, 'step', columns),
  };
  for (const read of [fields, parts.line, parts.step]) if ('sentence' in read) return read;
  const refused: Refused[] = [];
  const there = new Map(kept.recipes.map((one) => [one.key, one]));
  const made = new Map<string, Made>();
  for (const { line, cells } of rows) {
    const key = columns.cell(cells, 'key').trim();
    const kind = columns.cell(cells, 'row').trim().toLowerCase();
    const name = columns.cell(cells, 'name') || key;
    const one = made.get(key);
    if (kind === 'recipe' && one)
      refused.push({ line, name, sentence: `The key “${key}” stands on line ${one.line} already.` });
    else if (kind === 'recipe')
      made.set(key, { line, raw: (fields as FieldsFrom)(cells), lines: [], steps: [] });
    else if (kind !== 'line' && kind !== 'step')
      refused.push({
        line,
        name,
        sentence: `Write recipe, line or step in the column “row”, not “${kind.slice(0, 40)}”.`,
      });
    else if (!one)
      refused.push({
        line,
        name,
        sentence: `The row of the recipe “${key}” must come before its lines and steps.`,
      });
    else one[`${kind}s`].push({ line, raw: (parts[kind] as FieldsFrom)(cells) });
  }
  const withLines = columns.at.has('line, key');
  const withSteps = columns.at.has('step, key');
  const found = [...made].flatMap(([key, { line, raw, lines, steps }]): Found<'recipe'>[] => {
    const before = there.get(key);
    const whole = {
      ...before,
      ...raw,
      ...(withLines && { lines: lines.map((one) => one.raw) }),
      ...(withSteps && { steps: steps.map((one) => one.raw) }),
    };
    const lineAt = (path: readonly PropertyKey[]) =>
      (path[0] === 'lines' ? lines : path[0] === 'steps' ? steps : [])[Number(path[1])]?.line ?? line;
    const doc = shaped('recipe', whole, lineAt, refused);
    return doc ? [{ line, doc, before }] : [];
  });
  return { entity: 'recipe', found, refused };
};

type Part = { line: number; raw: Raw };
type Made = { line: number; raw: Raw; lines: Part[]; steps: Part[] };

const readers = { ingredients, prices, recipes };

/** A document of the right shape; when it is not, each reason is noted at its line. */
const shaped = <N extends 'ingredient' | 'recipe'>(
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
