import type { z } from 'zod';
import { readCsv } from './read.js';
import { csvText } from './write.js';

/** How one place of a document stands in columns: one cell, the cells of its fields, or a small table in one cell. */
export type Node =
  | { type: 'cell'; kind: 'text' | 'number' | 'flag'; nullable: boolean }
  | { type: 'fields'; fields: readonly (readonly [string, Node])[]; nullable: boolean; either: boolean }
  | { type: 'table'; row: Node; record: boolean };

type Schema = z.core.$ZodType;

/** The columns of a schema, but for the fields left out, which stand elsewhere. */
export const nodeOf = (schema: Schema, leaveOut: readonly string[] = []): Node => {
  const def = (schema as z.ZodType).def as unknown as Def;
  switch (def.type) {
    case 'default':
    case 'prefault':
    case 'optional':
      return nodeOf(def.innerType, leaveOut);
    case 'nullable': {
      const inner = nodeOf(def.innerType, leaveOut);
      return inner.type === 'table' ? inner : { ...inner, nullable: true };
    }
    case 'string':
    case 'enum':
    case 'literal':
      return { type: 'cell', kind: 'text', nullable: false };
    case 'number':
      return { type: 'cell', kind: 'number', nullable: false };
    case 'boolean':
      return { type: 'cell', kind: 'flag', nullable: false };
    case 'object':
      return { type: 'fields', fields: fieldsOf(def.shape, leaveOut), nullable: false, either: false };
    case 'union':
      return { type: 'fields', fields: eitherOf(def.options), nullable: false, either: true };
    case 'array':
      return { type: 'table', row: nodeOf(def.element), record: false };
    case 'record':
      return { type: 'table', row: nodeOf(def.valueType), record: true };
    default:
      throw new Error(`no column holds a ${def.type}`);
  }
};

type Def = {
  type: string;
  innerType: Schema;
  shape: Record<string, Schema>;
  options: readonly Schema[];
  element: Schema;
  valueType: Schema;
};

const fieldsOf = (shape: Record<string, Schema>, leaveOut: readonly string[]): [string, Node][] =>
  Object.entries(shape).flatMap(([name, schema]) =>
    leaveOut.includes(name) ? [] : [[name, nodeOf(schema)]],
  );

/** The fields of all the shapes a thing may have, each once. */
const eitherOf = (options: readonly Schema[]): [string, Node][] => {
  const found = new Map<string, Node>();
  for (const option of options)
    for (const [name, schema] of Object.entries(((option as z.ZodType).def as unknown as Def).shape))
      if (!isNothing(schema) && !found.has(name)) found.set(name, nodeOf(schema));
  return [...found];
};

const isNothing = (schema: Schema): boolean => {
  const def = (schema as z.ZodType).def as unknown as Def;
  return def.type === 'null' || (def.innerType !== undefined && isNothing(def.innerType));
};

/** The words above the columns of a node: "edible yield, source". */
export const headsOf = (node: Node, at: string): string[] =>
  node.type === 'fields'
    ? node.fields.flatMap(([name, inner]) => headsOf(inner, at ? `${at}, ${spaced(name)}` : spaced(name)))
    : [at];

export const spaced = (name: string): string =>
  name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/** The cells of a value. */
export const cellsOf = (node: Node, value: unknown): string[] => {
  if (node.type === 'fields')
    return node.fields.flatMap(([name, inner]) =>
      cellsOf(inner, (value as Record<string, unknown> | null | undefined)?.[name]),
    );
  if (node.type === 'table') return [tableText(node, value)];
  if (value === null || value === undefined) return [''];
  return [node.kind === 'flag' ? (value ? 'yes' : 'no') : String(value)];
};

const tableText = ({ row, record }: Node & { type: 'table' }, value: unknown): string => {
  const rows = record
    ? Object.entries((value ?? {}) as object)
        .toSorted(([a], [b]) => (a < b ? -1 : 1))
        .map(([key, one]) => [key, ...cellsOf(row, one)])
    : ((value ?? []) as unknown[]).map((one) => cellsOf(row, one));
  return csvText(rows, '\n').slice(0, -1);
};

/** How many columns a node takes. */
export const widthOf = (node: Node): number => headsOf(node, '').length;

/** The value that cells hold, as far as they can be read; what can't stays as text, for the rules to say so. */
export const valueIn = (node: Node, cells: readonly string[]): unknown => {
  if (node.type === 'table') return tableOf(node, cells[0] ?? '');
  if (node.type === 'cell') return cellValue(node, cells[0] ?? '');
  if (node.nullable && cells.every((cell) => cell === '')) return null;
  const value: Record<string, unknown> = {};
  let at = 0;
  for (const [name, inner] of node.fields) {
    const own = cells.slice(at, at + widthOf(inner));
    at += own.length;
    if (!node.either || own.some((cell) => cell !== '')) value[name] = valueIn(inner, own);
  }
  return value;
};

const cellValue = ({ kind, nullable }: Node & { type: 'cell' }, cell: string): unknown => {
  if (cell === '' && nullable) return null;
  if (kind === 'text') return cell;
  const plain = cell.trim().toLowerCase();
  if (kind === 'flag') return plain === 'yes' ? true : plain === 'no' || plain === '' ? false : cell;
  return /^-?\d{1,15}$/.test(plain) ? Number(plain) : plain === '' ? undefined : cell;
};

const tableOf = ({ row, record }: Node & { type: 'table' }, cell: string): unknown => {
  if (cell.trim() === '') return record ? {} : [];
  const read = readCsv(cell, { delimiter: ',', rows: 5000, letters: 2_000_000 });
  if ('sentence' in read) return cell;
  const rows = read.rows.map(({ cells }) => cells);
  return record
    ? Object.fromEntries(rows.map(([key = '', ...rest]) => [key, valueIn(row, padded(rest, row))]))
    : rows.map((cells) => valueIn(row, padded(cells, row)));
};

const padded = (cells: readonly string[], node: Node): string[] =>
  Array.from({ length: Math.max(cells.length, widthOf(node)) }, (_, i) => cells[i] ?? '');
