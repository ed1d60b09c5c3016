import { normalName } from '../core/names.js';

const most = 200;

/** One page of a long list: what was asked for by name, in the kitchen's order. */
export type Listing<T> = {
  asked: string;
  rows: T[];
  /** How many there are in all, how many bear what was asked for, and the place of the first one shown. */
  all: number;
  found: number;
  from: number;
  more: number;
};

const orders = new Map<string, Intl.Collator>();

/** Names in the order of a kitchen's locale. */
export const inOrder = <T extends { name: string }>(rows: readonly T[], locale: string): T[] => {
  const order = orders.get(locale) ?? new Intl.Collator(locale, { numeric: true });
  orders.set(locale, order);
  return rows.toSorted((a, b) => order.compare(a.name, b.name));
};

/** Places in that order, the home kitchen first. */
export const placesInOrder = <T extends { name: string; kind: 'home' | 'venue' }>(
  places: readonly T[],
  locale: string,
): T[] => inOrder(places, locale).toSorted((a, b) => Number(b.kind === 'home') - Number(a.kind === 'home'));

/** The rows whose name holds what was asked for, whatever its case and spacing, two hundred from `from` on. */
export const listing = <T extends { name: string }>(
  rows: readonly T[],
  { asked, from, locale }: { asked: string; from: string; locale: string },
): Listing<T> => {
  const wanted = normalName(asked);
  const found = wanted === '' ? rows : rows.filter(({ name }) => normalName(name).includes(wanted));
  const first = /^\d{1,6}$/.test(from) ? Number(from) : 0;
  const shown = inOrder(found, locale).slice(first, first + most);
  return {
    asked,
    rows: shown,
    all: rows.length,
    found: found.length,
    from: first,
    more: Math.max(0, found.length - first - shown.length),
  };
};
