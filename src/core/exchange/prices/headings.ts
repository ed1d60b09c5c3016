import { type ListColumn, listColumns } from '../../facts/price-list.js';
import { normalName } from '../../names.js';
import type { Csv } from '../csv/read.js';

// Of each the likeliest first.
const headingWords = {
  name: 'product name|description|product description|product|item description|item name|name|item|article|artikel|bezeichnung|désignation|ingredient',
  code: 'product code|item code|code|sku|item no|item number|product no|article no|stock code|plu|ref|reference|no',
  size: 'pack size|packsize|size|unit size|pack|packing|content|contents',
  amount: 'pack quantity|menge|pack qty|amount|quantity|qty|weight|net weight|volume',
  unit: 'unit of measure|einheit|uom|unit|units|measure|sold by|per',
  count: 'case quantity|case qty|units per case|packs per case|per case|outer|count',
  price:
    'pack price|preis|prix|case price|net price|price|list price|your price|cost|unit price|unit cost|rate',
  date: 'price date|valid from|effective from|effective date|effective|from|date',
  brand: 'brand|manufacturer|producer|make',
  section: 'section|category|department|group|product group|range|class',
} satisfies Record<ListColumn, string>;

const wordsFor = (is: ListColumn): string[] => headingWords[is].split('|');

const plainHeading = (heading: string): string =>
  normalName(
    heading
      .replace(/\(.*?\)|[£€$]|\b(ex|inc|excl|incl)\.? vat\b|\b[A-Z]{3}\b(?=\s*$)/g, ' ')
      .replace(/[_./:-]+/g, ' '),
  );

/** The column whose heading speaks of a thing: the same words, else words within it. */
export const byHeading = <C extends { heading: string }>(
  is: ListColumn,
  columns: readonly C[],
): C | undefined => {
  const words = wordsFor(is);
  const named = columns.map((column) => ({ column, plain: plainHeading(column.heading) }));
  for (const word of words) {
    const exact = named.find(({ plain }) => plain === word);
    if (exact) return exact.column;
  }
  return words
    .filter((word) => word.length > 3)
    .map((word) => named.find(({ plain }) => ` ${plain} `.includes(` ${word} `))?.column)
    .find(Boolean);
};

/** Whether the first row says what the columns hold. */
export const hasHeadings = ({ rows }: Csv): boolean => {
  const [first, ...rest] = rows;
  if (!first) return false;
  const worded = first.cells.filter((cell) => cell.trim() !== '');
  const known = worded.filter((cell) => listColumns.some((is) => wordsFor(is).includes(plainHeading(cell))));
  if (known.length >= 2) return true;
  return (
    !worded.some((cell) => /\d/.test(cell)) && rest.some(({ cells }) => cells.some((cell) => /\d/.test(cell)))
  );
};
