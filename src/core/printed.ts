import type { PrintedLine, PrintedSheet } from './facts/printed-sheet.js';
import type { Sheet, Table } from './sheets/sheet.js';

/** One line of a paper: a dish, a guest or what stands at its head, with all the sheet says of it. */
export type SheetLine = Pick<PrintedLine, 'of'> & { name: string; text: string };

/** A line as it is kept, with the name it has today. */
export type LineNow = Omit<PrintedLine, 'dish'> & Pick<SheetLine, 'name'>;

/**
 * What a sheet says, gathered by dish and by guest, so that two answers can be held against each other line by line. A
 * row of a guest is the guest's, whatever dish it is about.
 */
export const linesOf = ({ title, about, tables }: Sheet): SheetLine[] => {
  const lines = new Map<string, SheetLine>();
  for (const table of tables)
    for (const row of table.rows) {
      const of = row.guest === undefined ? ('dish' as const) : ('guest' as const);
      const name = row.guest ?? row.dish ?? '';
      const mark = `${of} ${name}`;
      const line = lines.get(mark) ?? { of, name, text: '' };
      lines.set(mark, { ...line, text: `${line.text}${rowText(table, row)}\n` });
    }
  const { notKnown: _, ...head } = about;
  return [{ of: 'head', name: '', text: JSON.stringify([title, head]) }, ...lines.values()];
};

const rowText = ({ name, columns }: Table, row: Table['rows'][number]): string =>
  JSON.stringify([name, ...columns.map(({ key }) => row[key] ?? '')]);

/** What of a printed paper no longer holds, by name; `guests` counts lines whose guests are not there any more. */
export type Outdated = { head: boolean; changed: string[]; added: string[]; gone: string[]; guests: number };

/**
 * Holds a printed paper against what its sheet says now; undefined where it still holds. Of a paper on which some
 * dishes alone were printed (`part`), the others are not missed.
 */
export const outdatedBy = (
  printed: Pick<PrintedSheet, 'lines'>,
  now: readonly LineNow[],
  part = false,
): Outdated | undefined => {
  const before = new Map(printed.lines.map((line) => [line.id, line]));
  const there = new Set(now.map(({ id }) => id));
  const differs = now.filter(
    ({ id, fingerprint }) => (before.get(id)?.fingerprint ?? fingerprint) !== fingerprint,
  );
  const gone = printed.lines.filter(({ id }) => !there.has(id));
  const found = {
    head: differs.some(({ of }) => of === 'head'),
    changed: differs.flatMap(({ of, name }) => (of === 'head' ? [] : [name])),
    added: part ? [] : now.filter(({ id }) => !before.has(id)).map(({ name }) => name),
    gone: gone.flatMap(({ of, dish }) => (of === 'dish' ? [dish] : [])),
    guests: gone.filter(({ of }) => of === 'guest').length,
  };
  const { head, changed, added, guests } = found;
  return head || changed.length + added.length + found.gone.length + guests > 0 ? found : undefined;
};

/** A print without its lines about guests; a paper that had some no longer holds. */
export const forgetInPrint = <P extends Pick<PrintedSheet, 'lines'>>(printed: P): P => ({
  ...printed,
  lines: printed.lines.filter(({ of }) => of !== 'guest'),
});
