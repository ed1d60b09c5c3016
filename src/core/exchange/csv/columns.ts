import { asItWas } from './harmless.js';
import { headsOf, type Node, valueIn } from './nodes.js';
import type { Csv } from './read.js';
import { headings, type TableName } from './tables.js';

/** Reads the fields of a node from a row's cells; fields whose columns the file lacks are left out. */
export type FieldsFrom = (cells: readonly string[]) => Record<string, unknown>;

export type Columns = {
  table: TableName;
  at: ReadonlyMap<string, number>;
  cell(cells: readonly string[], heading: string): string;
};

const plain = (heading: string): string => heading.trim().toLowerCase().replace(/\s+/g, ' ');

/** Which table a file is, by its headings, or why that can't be told. */
export const columnsIn = ({ rows }: Csv): Columns | { sentence: string } => {
  const heads = (rows[0]?.cells ?? []).map((cell) => plain(asItWas(cell)));
  const at = new Map(heads.map((head, i) => [head, i]));
  const table = has(at, 'row', 'key')
    ? 'recipes'
    : has(at, 'ingredient', 'pack, key')
      ? 'prices'
      : 'ingredients';
  if (table === 'ingredients' && !has(at, 'name') && !has(at, 'key'))
    return {
      sentence: 'The first row names none of the columns of ingredients.csv, prices.csv or recipes.csv.',
    };
  const known = new Set(headings[table].map(plain));
  const strange = heads.filter((head) => head !== '' && !known.has(head));
  if (strange.length > 0)
    return {
      sentence: `There is no column “${strange[0]!.slice(0, 60)}” in ${table}.csv. Take it out, or mend its heading.`,
    };
  const twice = heads.find((head, i) => head !== '' && heads.indexOf(head) < i);
  if (twice) return { sentence: `The column “${twice}” stands twice.` };
  return { table, at, cell: (cells, heading) => asItWas(cells[at.get(plain(heading)) ?? -1] ?? '') };
};

const has = (at: ReadonlyMap<string, number>, ...heads: string[]): boolean =>
  heads.every((head) => at.has(head));

/** A reader of a node's fields; a field that has only some of its columns in the file is a sentence. */
export const fieldsFrom = (
  node: Node,
  prefix: string,
  { at, cell }: Columns,
): FieldsFrom | { sentence: string } => {
  if (node.type !== 'fields') throw new Error('only fields have columns of their own');
  const found: { name: string; inner: Node; heads: string[] }[] = [];
  for (const [name, inner] of node.fields) {
    const heads = headsOf({ ...node, fields: [[name, inner]] }, prefix);
    const there = heads.filter((head) => at.has(plain(head)));
    if (there.length === heads.length) found.push({ name, inner, heads });
    else if (there.length > 0)
      return {
        sentence: `The column “${heads.find((head) => !at.has(plain(head)))}” is missing beside “${there[0]}”.`,
      };
  }
  return (cells) =>
    Object.fromEntries(
      found.map(({ name, inner, heads }) => [
        name,
        valueIn(
          inner,
          heads.map((head) => cell(cells, head)),
        ),
      ]),
    );
};
