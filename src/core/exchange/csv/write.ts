/** Rows as CSV text (RFC 4180), each line ended by CR LF; a cell is quoted where it must be. */
export const csvText = (rows: readonly (readonly string[])[]): string =>
  rows.map((cells) => `${cells.map(quoted).join(',')}\r\n`).join('');

const quoted = (cell: string): string =>
  /[",;\t\r\n]|^\s|\s$/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
