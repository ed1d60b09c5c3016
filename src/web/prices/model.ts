import {
  byRise,
  type Kind,
  type Plan,
  type Priced,
  riseOf,
  type Unmatched,
} from '../../core/exchange/prices/plan.js';
import type { ListRow, Refusal } from '../../core/exchange/prices/rows.js';
import type { Kitchen } from '../../core/facts/kitchen.js';
import { normalName } from '../../core/names.js';
import { nearNames } from '../../core/near-names.js';
import { Rational } from '../../core/quantity/rational.js';
import type { Choice } from '../fields.js';
import { type Format, formatFor } from '../format.js';
import { pageOf } from '../links.js';
import { measureInWords } from '../typed.js';

/** How many rows of a kind a page shows; the rest are in the CSV. */
export const mostShown = 200;

export type PricedRow = {
  id: string;
  line: number;
  price: string;
  was: string;
  rise: string;
  name: string;
  /** The ingredient's page; none for one that is still to be made. */
  href: string;
  listed: string;
  pack: string;
  date: string;
  note: string;
  wrong: boolean;
};

export type UnmatchedRow = {
  id: string;
  line: number;
  price: string;
  name: string;
  size: string;
  choices: Choice[];
};
type Some<T> = { rows: T[]; all: number; more: number };

export type PreviewModel = Record<Kind, Some<PricedRow>> & {
  unmatched: Some<UnmatchedRow> & { asked: string; found: number };
  leftOut: Some<{ id: string; name: string; line: number }>;
  refused: Some<Refusal>;
};

const some = <T, R>(all: readonly T[], row: (one: T) => R): Some<R> => ({
  rows: all.slice(0, mostShown).map(row),
  all: all.length,
  more: Math.max(0, all.length - mostShown),
});

/** What a plan shows, kind by kind; of the unmatched rows those whose name holds what was asked for. */
export const previewOf = (
  plan: Plan,
  {
    kitchen,
    names,
    asked,
  }: { kitchen: Kitchen; names: readonly { key: string; name: string }[]; asked: string },
): PreviewModel => {
  const f = formatFor(kitchen);
  const priced = (one: Priced) => pricedRow(one, f);
  const wanted = normalName(asked);
  const unmatched = plan.unmatched
    .filter(({ row }) => wanted === '' || normalName(row.name).includes(wanted))
    .toSorted((a, b) => Number(b.near.length > 0) - Number(a.near.length > 0));
  return {
    fresh: some(plan.fresh, priced),
    changed: some(byRise(plan.changed), priced),
    older: some(plan.older, priced),
    same: some(plan.same, priced),
    unmatched: {
      ...some(unmatched, (one) => unmatchedRow(one, names, f)),
      all: plan.unmatched.length,
      found: unmatched.length,
      asked,
    },
    leftOut: some(plan.leftOut, ({ id, name, line }) => ({ id, name: name || id, line })),
    refused: some(plan.refused, (one) => one),
  };
};

const pricedRow = (priced: Priced, f: Format): PricedRow => {
  const { row, match, before } = priced;
  const rise = riseOf(priced);
  const { key, name } = match.ingredient;
  return {
    id: row.id,
    line: row.line,
    price: f.money(row.price),
    was: before ? `${f.money(before.price)}${before.guess ? ', a guess' : ''}` : '',
    rise: rise ? `${rise.compare(Rational.zero) > 0 ? '+' : ''}${f.percent(rise)}` : '',
    name,
    href: key === null ? '' : pageOf('ingredient', key),
    listed: row.name,
    pack: packInWords(row, match.pack?.size),
    date: f.dateYear(row.date),
    note: noteOf(priced),
    wrong: match.how !== 'code' || match.pack === null,
  };
};

const packInWords = ({ size, brand }: ListRow, held = size): string =>
  [held && measureInWords(held), brand].filter(Boolean).join(', ');

const noteOf = ({ match, kind, before }: Priced): string => {
  if (match.ingredient.key === null) return 'a new ingredient';
  if (match.instead)
    return `a new pack: under this code it was ${measureInWords(match.instead.size)}${match.instead.brand ? `, ${match.instead.brand}` : ''}. Lines stay priced at that one until you choose this one.`;
  if (!match.pack)
    return match.how === 'name' ? 'a new pack, matched by its name' : 'a new pack, as you chose';
  if (kind === 'older' && before) return 'goes into the history; a later price stands';
  return match.how === 'name' ? 'matched by its name' : match.how === 'choice' ? 'as you chose' : '';
};

const unmatchedRow = (
  { row, near }: Unmatched,
  names: readonly { key: string; name: string }[],
  f: Format,
): UnmatchedRow => ({
  id: row.id,
  line: row.line,
  price: f.money(row.price),
  name: row.name || row.id,
  size: packInWords(row),
  choices: [
    { value: '', label: 'Not yet' },
    ...(near.length > 0 ? near : nearTo(row.name, names)).map(({ key, name }) => ({
      value: `k:${key}`,
      label: `It is ${name}`,
    })),
    { value: 'named', label: 'It is the one named beside' },
    { value: 'new', label: 'A new ingredient, named beside' },
    { value: 'out', label: 'Never ask about it again' },
  ],
});

// Comparing letter by letter takes its time: beyond so many names only whole words are compared.
const fewNames = 3000;

const nearTo = (name: string, names: readonly { key: string; name: string }[]) => {
  if (names.length > fewNames) return [];
  const near = nearNames(
    name,
    names.map((one) => one.name),
  );
  return near.flatMap((found) => names.find((one) => one.name === found) ?? []);
};
