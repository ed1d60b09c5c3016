const formula = /^'*[=+\-@\t\r\n＝＋－＠]/;
const plainFigure = /^[-+]?\d+([.,]\d+)?$/;

/**
 * A cell that no spreadsheet runs: one that begins like a formula gets an apostrophe before it (OWASP, CSV injection).
 * Plain figures stay as they are.
 */
export const harmless = (cell: string): string =>
  formula.test(cell) && !plainFigure.test(cell) ? `'${cell}` : cell;

/** What a cell was before it was made harmless. */
export const asItWas = (cell: string): string =>
  cell.startsWith("'") && formula.test(cell.slice(1)) ? cell.slice(1) : cell;
