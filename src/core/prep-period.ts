import { addDays, mondayOf } from './calendar.js';
import type { Span } from './due.js';
import type { PrepPeriod, Tick } from './facts/prep-period.js';
import { exact } from './quantity/amount.js';

type Begun = Pick<PrepPeriod, 'key' | 'from' | 'to'>;

/** The period that a day is in; undefined while none is begun. */
export const periodOn = <P extends Span>(date: string, periods: readonly P[]): P | undefined =>
  periods.find(({ from, to }) => from <= date && date <= to);

/** The period to begin for a day that is in none: its week, as far as no other period has those days already. */
export const newPeriod = (date: string, others: readonly Begun[]): Begun => {
  const monday = mondayOf(date);
  const ends = others.filter(({ to }) => to < date).map(({ to }) => addDays(to, 1));
  const starts = others.filter(({ from }) => from > date).map(({ from }) => addDays(from, -1));
  const from = [monday, ...ends].sort().at(-1)!;
  const to = [addDays(monday, 6), ...starts].sort()[0]!;
  let key = `from-${from}`;
  while (others.some((one) => one.key === key)) key += '-again';
  return { key, from, to };
};

type Batches = Tick['batches'];

/** The greater of two amounts made of one job, so that a page opened before takes nothing back; unknown is the least. */
export const moreOf = (a: Batches, b: Batches): Batches =>
  a === null || (b !== null && exact(a).compare(exact(b)) < 0) ? b : a;
