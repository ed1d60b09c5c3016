import type { Measure } from '../../facts/common.js';
import type { ListColumn, PriceList } from '../../facts/price-list.js';
import { normalName } from '../../names.js';
import { isRead } from '../../reading.js';
import type { Csv, CsvRow } from '../csv/read.js';
import { listDay } from './day.js';
import { cited, listPrice } from './figure.js';
import { listSize, listUnit, manyOf, sizeInName } from './size.js';

/** One price of a list. `id` is what the supplier knows the pack by: the code, or else name and size. */
export type ListRow = {
  line: number;
  id: string;
  name: string;
  /** What the pack holds; null where the list doesn't say. */
  size: Measure | null;
  price: number;
  date: string;
  brand: string;
  section: string;
};

/** A row that is not taken over, and why. */
export type Refusal = { line: number; name: string; sentence: string };
export type ListRead = { rows: ListRow[]; refused: Refusal[] };

export type Asked = {
  list: Pick<PriceList, 'columns' | 'headings' | 'decimal' | 'days'>;
  currency: string;
  /** The day of rows that name none. */
  date: string;
  today: string;
};

/** Reads every row of a price list by the columns chosen for it. */
export const readList = (csv: Csv, asked: Asked): ListRead => {
  const read: ListRead = { rows: [], refused: [] };
  const at = new Map(asked.list.columns.map(({ is, place }) => [is, place - 1]));
  for (const row of asked.list.headings ? csv.rows.slice(1) : csv.rows) {
    const found = readRow(row, at, asked);
    if ('sentence' in found) read.refused.push(found);
    else read.rows.push(found);
  }
  return { ...read, rows: idsApart(read.rows) };
};

/** Where one code stands for several sizes or brands, as for a piece and a case of it, each gets an id of its own. */
export const idsApart = (rows: readonly ListRow[]): ListRow[] => {
  const packs = new Map<string, string>();
  const several = new Set<string>();
  for (const row of rows) {
    const pack = packOf(row);
    if ((packs.get(row.id) ?? pack) !== pack) several.add(row.id);
    packs.set(row.id, pack);
  }
  if (several.size === 0) return [...rows];
  return rows.map((row) =>
    several.has(row.id) ? { ...row, id: `${row.id.slice(0, 100)} ${packOf(row)}`.slice(0, 200).trim() } : row,
  );
};

const packOf = ({ size, brand }: ListRow): string =>
  [size && `${size.amount} ${size.unit}`, normalName(brand)].filter(Boolean).join(' ');

type Places = ReadonlyMap<ListColumn, number>;
type Cell = (is: ListColumn) => string;

const readRow = ({ line, cells }: CsvRow, at: Places, asked: Asked): ListRow | Refusal => {
  const cell: Cell = (is) => (at.has(is) ? oneLine(cells[at.get(is)!] ?? '') : '');
  const name = cell('name');
  const refuse = (sentence: string): Refusal => ({
    line,
    name: name || cell('code') || cells.join(' ').slice(0, 80),
    sentence,
  });
  if (name === '' && cell('code') === '') return refuse('There is neither a name nor a code.');
  if (name.length > 200) return refuse('The name is longer than 200 letters.');
  const { list, currency, today } = asked;
  const price = listPrice(cell('price'), { decimal: list.decimal, currency });
  if (!isRead(price)) return refuse(price.sentence);
  const size = sizeOf(cell, at, list.decimal);
  if ('sentence' in size) return refuse(size.sentence);
  const date =
    cell('date') === '' ? { value: asked.date } : listDay(cell('date'), { days: list.days, today });
  if (!isRead(date)) return refuse(date.sentence);
  return {
    line,
    id: idOf(cell('code'), name, size.value),
    name,
    size: size.value,
    price: price.value,
    date: date.value,
    brand: cell('brand').slice(0, 120),
    section: cell('section').slice(0, 60),
  };
};

const oneLine = (cell: string): string => cell.replace(/\s+/g, ' ').trim();

const idOf = (code: string, name: string, size: Measure | null): string =>
  (code || [normalName(name), size && `${size.amount} ${size.unit}`].filter(Boolean).join(' '))
    .slice(0, 200)
    .trim();

type Size = { value: Measure | null } | { sentence: string };

const sizeOf = (cell: Cell, at: Places, decimal: PriceList['decimal']): Size => {
  if (!['size', 'amount', 'unit'].some((is) => at.has(is as ListColumn)))
    return { value: sizeInName(cell('name'), decimal) ?? null };
  const words = sizeWords(cell);
  if (words === '' && at.has('name')) {
    const named = sizeInName(cell('name'), decimal);
    if (named) return { value: named };
  }
  const size = listSize(words, decimal);
  const count = cell('count');
  return isRead(size) && count !== '' ? manyOf(size.value, count, decimal) : size;
};

/** Amount and unit in one, from however many columns they stand in. */
const sizeWords = (cell: Cell): string => {
  const unit = cell('unit');
  const size = cell('size') || cell('amount');
  if (size === '') return unit;
  return /\p{L}/u.test(size) && !listUnitMissing(size, unit) ? size : `${size} ${unit}`.trim();
};

/** "6 x 400" beside a column "g" has its unit there. */
const listUnitMissing = (size: string, unit: string): boolean =>
  unit !== '' && /^[\d\s.,x×*]+$/i.test(size) && listUnit(unit) !== undefined;

export const rowInWords = ({ name, id }: Pick<ListRow, 'name' | 'id'>): string => name || cited(id);
