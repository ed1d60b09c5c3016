import type { ListColumn, PriceList } from '../../facts/price-list.js';
import { listColumns } from '../../facts/price-list.js';
import { normalName } from '../../names.js';
import { isRead } from '../../reading.js';
import type { Csv } from '../csv/read.js';
import { listDay, slashedDay } from './day.js';
import { listFigure } from './figure.js';
import { byHeading, hasHeadings } from './headings.js';
import { listSize, listUnit } from './size.js';

/** What the columns of a list may hold, and how that was guessed; null where the list does not say. */
export type Guess = {
  headings: boolean;
  columns: (PriceList['columns'][number] & { by: 'heading' | 'values' })[];
  decimal: PriceList['decimal'] | null;
  days: PriceList['days'] | null;
};

/** Guesses what each column of a price list holds, from the word above it and from its first values. */
export const guessColumns = (csv: Csv, today: string): Guess => {
  const headings = hasHeadings(csv);
  const columns = columnsOf(csv, headings);
  const found: Guess['columns'] = [];
  const take = (is: ListColumn, column: Column | undefined, by: 'heading' | 'values') => {
    if (column && !found.some((one) => one.is === is || one.place === column.place))
      found.push({ is, heading: column.heading, place: column.place, by });
  };
  if (headings)
    for (const is of listColumns)
      take(
        is,
        byHeading(
          is,
          columns.filter(({ place }) => !found.some((one) => one.place === place)),
        ),
        'heading',
      );
  for (const [is, fits] of byValues)
    take(
      is,
      mostly(
        columns.filter(({ place }) => !found.some((one) => one.place === place)),
        fits,
      ),
      'values',
    );
  const settled = sizesSettled(found, columns);
  const valuesOf = (is: ListColumn) =>
    columns.find(({ place }) => place === settled.find((one) => one.is === is)?.place)?.values ?? [];
  return {
    headings,
    columns: settled,
    decimal: decimalOf(valuesOf('price')),
    days: daysOf(valuesOf('date'), today),
  };
};

type Column = { place: number; heading: string; values: string[] };

const sample = 300;

/** The columns with their headings and first values that are not empty. */
export const columnsOf = (csv: Csv, headings: boolean): Column[] => {
  const rows = headings ? csv.rows.slice(1) : csv.rows;
  const wide = csv.rows.slice(0, sample).reduce((most, { cells }) => Math.max(most, cells.length), 0);
  return Array.from({ length: wide }, (_, i) => ({
    place: i + 1,
    heading: headings ? (csv.rows[0]?.cells[i] ?? '').replace(/\s+/g, ' ').trim().slice(0, 120) : '',
    values: rows.slice(0, sample).flatMap(({ cells }) => cells[i]?.trim() || []),
  }));
};

const isPrice = (value: string): boolean => /^\D{0,4}\d[\d.,' ]*[.,]\d{2}\D{0,4}$/.test(value);
const isSize = (value: string): boolean =>
  /\d/.test(value) &&
  /\p{L}/u.test(value) &&
  isRead(listSize(value, value.includes(',') ? 'comma' : 'point'));
const isDay = (value: string): boolean =>
  /\d/.test(value) &&
  (slashedDay(value) !== undefined || isRead(listDay(value, { days: 'day-first', today: '9999-12-31' })));
const isName = (value: string): boolean => /\p{L}{2}/u.test(value) && !isSize(value);
const isUnit = (value: string): boolean => !/\d/.test(value) && listUnit(value) !== undefined;

const byValues: readonly [ListColumn, (value: string) => boolean][] = [
  ['date', isDay],
  ['price', isPrice],
  ['unit', isUnit],
  ['size', isSize],
  ['name', isName],
];

/** The column most of whose values fit, three quarters at least; of equals the one with the longest. */
const mostly = (columns: readonly Column[], fits: (value: string) => boolean): Column | undefined => {
  const share = ({ values }: Column) =>
    values.length === 0 ? 0 : values.filter(fits).length / values.length;
  const length = ({ values }: Column) => values.reduce((sum, one) => sum + one.length, 0);
  return columns.filter((column) => share(column) >= 0.75).toSorted((a, b) => length(b) - length(a))[0];
};

/** A size that is a bare figure beside a unit is an amount; a unit that holds figures is a size. */
const sizesSettled = (found: Guess['columns'], columns: readonly Column[]): Guess['columns'] => {
  const bare = (place: number) =>
    columns.find((one) => one.place === place)?.values.every((value) => /^[\d.,]+$/.test(value)) ?? false;
  const worded = (place: number) =>
    columns
      .find((one) => one.place === place)
      ?.values.some((value) => /\d/.test(value) && listUnit(value) === undefined) ?? false;
  const has = (is: ListColumn) => found.some((one) => one.is === is);
  return found.flatMap((one) => {
    if (one.is === 'size' && bare(one.place) && has('unit') && !has('amount'))
      return [{ ...one, is: 'amount' as const }];
    if (one.is === 'unit' && worded(one.place) && !has('size')) return [{ ...one, is: 'size' as const }];
    if (one.is === 'amount' && !has('unit') && !bare(one.place) && !has('size'))
      return [{ ...one, is: 'size' as const }];
    return [one];
  });
};

const bareFigure = (value: string): string => value.replace(/[^\d.,' ]/g, '').trim();

/** Which sign stands before the pennies; null when the figures can be read both ways or speak for both. */
const decimalOf = (values: readonly string[]): PriceList['decimal'] | null => {
  const figures = values.map(bareFigure).filter((value) => /[.,]/.test(value));
  const only = (sign: 'point' | 'comma', other: 'point' | 'comma') =>
    figures.filter((value) => listFigure(value, sign) !== undefined && listFigure(value, other) === undefined)
      .length;
  const [point, comma] = [only('point', 'comma'), only('comma', 'point')];
  if (figures.length === 0) return 'point';
  if (point > 0 && comma === 0) return 'point';
  return comma > 0 && point === 0 ? 'comma' : null;
};

/** Which comes first in a date: the reading that gives more days, none of them to come; null when both give as many. */
const daysOf = (values: readonly string[], today: string): PriceList['days'] | null => {
  const slashed = values.filter((value) => slashedDay(value) !== undefined);
  const fits = (days: PriceList['days']) =>
    slashed.filter((value) => isRead(listDay(value, { days, today }))).length;
  const [day, month] = [fits('day-first'), fits('month-first')];
  if (slashed.length === 0 || day > month) return 'day-first';
  return month > day ? 'month-first' : null;
};

/** The columns of a list that was read before, found again in a new one; undefined when one of them is not there. */
export const columnsAgain = (csv: Csv, list: PriceList): PriceList['columns'] | undefined => {
  const columns = columnsOf(csv, list.headings);
  const found = list.columns.flatMap((column) => {
    if (!list.headings) return column.place <= columns.length ? [column] : [];
    const wanted = normalName(column.heading);
    const same = columns.filter(({ heading }) => normalName(heading) === wanted);
    const one = same.find(({ place }) => place === column.place) ?? same[0];
    return one ? [{ ...column, place: one.place }] : [];
  });
  return list.columns.length > 0 && found.length === list.columns.length ? found : undefined;
};
