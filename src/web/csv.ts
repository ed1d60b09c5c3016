import { harmless } from '../core/exchange/csv/harmless.js';
import { csvText } from '../core/exchange/csv/write.js';
import type { Sheet } from '../core/sheets/sheet.js';

/**
 * A sheet as one CSV table (RFC 4180): the first column names the table a row is of, and what is still open and the
 * notes at the foot follow as rows of their own, so that figures never travel without them.
 */
export const csvOf = (sheet: Sheet): string => {
  const columns = new Map<string, string>([['table', 'table']]);
  const { tables } = sheet;
  for (const table of tables)
    for (const { key, label, unit } of table.columns)
      if (!columns.has(key)) columns.set(key, unit ? `${label} (${unit})` : label);
  columns.set('note', 'note');
  const rows = [
    ...tables.flatMap(({ name, rows }) => rows.map((row) => ({ ...row, table: name }))),
    ...sheet.problems.map(({ sentence }) => ({ table: 'to settle', note: sentence })),
    ...sheet.foot.map((note) => ({ table: 'notes', note })),
  ];
  const cells = rows.map((row) => [...columns.keys()].map((key) => harmless((row as Cells)[key] ?? '')));
  return csvText([[...columns.values()].map(harmless), ...cells]);
};

type Cells = Record<string, string>;
