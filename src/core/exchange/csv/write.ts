/** Rows as CSV text (RFC 4180), each line ended by CR LF or as said; a cell is quoted where it must be. */
export const csvText = (rows: readonly (readonly string[])[], end = '\r\n'): string =>
  rows.map((cells) => `${cells.map(quoted).join(',')}${end}`).join('');

const quoted = (cell: string): string =>
  /[",;\t\r\n]|^\s|\s$/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
