import { CsvError, parse } from 'csv-parse/sync';

/** A row with the number of the line it begins on in the file, the first being 1. */
export type CsvRow = { line: number; cells: string[] };
export type Csv = { delimiter: Delimiter; rows: CsvRow[] };
export type Delimiter = ',' | ';' | '\t';

export const mostRows = 50_000;
export const mostText = 16_000_000;
const mostColumns = 200;

type Limits = { rows: number; letters: number; delimiter?: Delimiter };

/**
 * The rows of a CSV text (RFC 4180; between fields a comma, a semicolon or a tab), blank ones left out, or the
 * sentence that says why it can't be read. At most 50 000 rows below the headings, unless other limits are given.
 */
export const readCsv = (
  given: string,
  { rows: most, letters, delimiter: known }: Limits = { rows: mostRows, letters: mostText },
): Csv | { sentence: string } => {
  const text = given.replace(/^\uFEFF/, '');
  if (text.length > letters)
    return { sentence: `This is more than ${spaced(letters)} letters. Send it in parts.` };
  if (text.includes('\0')) return { sentence: 'This is no text. Save the list as CSV and choose that file.' };
  if (text.trim() === '')
    return { sentence: 'There is nothing in it. Choose a CSV file, or paste its text.' };
  const delimiter = known ?? delimiterOf(text);
  try {
    const rows = rowsOf(text, delimiter, most);
    if (rows.length === 0) return { sentence: 'There are no rows in it, only empty ones.' };
    if (rows.length > most + 1)
      return { sentence: `This has more than ${spaced(most)} rows. Send it in parts.` };
    if (rows.some(({ cells }) => cells.length > mostColumns))
      return { sentence: `This has more than ${mostColumns} columns. Leave out those that are not needed.` };
    return { delimiter, rows };
  } catch (error) {
    if (error instanceof CsvError) return { sentence: broken(error) };
    throw error;
  }
};

const spaced = (n: number): string => String(n).replace(/(?=(\d{3})+$)\B/g, ' ');

const rowsOf = (text: string, delimiter: Delimiter, most: number): CsvRow[] => {
  const options = {
    delimiter,
    record_delimiter: ['\r\n', '\n', '\r'],
    info: true,
    relax_column_count: true,
    relax_quotes: true,
  };
  const found = parse(text, { ...options, to: most + 2, skip_empty_lines: true }) as unknown as Parsed[];
  return found.flatMap(({ record, info }) =>
    record.every((cell) => cell.trim() === '')
      ? []
      : [{ line: info.lines - record.reduce((sum, cell) => sum + breaks(cell), 0), cells: record }],
  );
};

type Parsed = { record: string[]; info: { lines: number } };

const breaks = (cell: string): number => (/[\r\n]/.test(cell) ? (cell.match(/\r\n|\r|\n/g)?.length ?? 0) : 0);

const broken = (error: CsvError): string =>
  error.code === 'CSV_QUOTE_NOT_CLOSED'
    ? `The quotation mark that opens on line ${(error as { lines?: number }).lines ?? '?'} is never closed. Close it, or take it out.`
    : 'The rows of this text can’t be told apart. Save the list as CSV and choose that file.';

// A comma may be the sign before pennies, so of equals the others go first.
const delimiters: readonly Delimiter[] = [';', '\t', ','];

/** The sign that stands equally often, outside quotation marks, in most of the first lines. */
const delimiterOf = (text: string): Delimiter => {
  const lines = firstLines(text);
  const score = (sign: Delimiter): number => {
    const counts = lines.map((line) => line.split(sign).length - 1);
    return counts.filter((n) => n > 0 && n === counts[0]).length;
  };
  const most = Math.max(...delimiters.map(score));
  return most === 0 ? ',' : delimiters.find((sign) => score(sign) === most)!;
};

const firstLines = (text: string): string[] =>
  text
    .slice(0, 20_000)
    .replace(/"(?:[^"]|"")*"/g, '')
    .split(/\r\n|\r|\n/)
    .filter((line) => line.trim() !== '')
    .slice(0, 20);
