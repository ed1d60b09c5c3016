import { type FieldsFrom, fieldsFrom } from './columns.js';
import { type Found, type Raw, type Reader, type Refused, shaped } from './reader.js';
import { nodes } from './tables.js';

/** recipes.csv: a row for each recipe, and below it one for each line and step. */
export const recipes: Reader = (rows, columns, kept) => {
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
