import { keyFrom } from '../../keys.js';
import { normalName } from '../../names.js';
import { columnsIn, fieldsFrom } from './columns.js';
import { prices } from './price-rows.js';
import type { Csv } from './read.js';
import { type Documents, type Found, type Reader, type Refused, shaped } from './reader.js';
import { recipes } from './recipe-rows.js';
import { type Kept, nodes } from './tables.js';

/** ingredients.csv: each row an ingredient; one without a key is known by its name. */
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

const readers = { ingredients, prices, recipes };

/** The documents a table of ours makes, beside those that stand; or why the file as a whole can't be read. */
export const documentsIn = (csv: Csv, kept: Kept): Documents | { sentence: string } => {
  const columns = columnsIn(csv);
  if ('sentence' in columns) return columns;
  return readers[columns.table](csv.rows.slice(1), columns, kept);
};
