import type { Ingredient, Pack, Price } from '../../facts/ingredient.js';
import type { Kitchen } from '../../facts/kitchen.js';
import type { PriceList } from '../../facts/price-list.js';
import { normalName } from '../../names.js';
import { Rational } from '../../quantity/rational.js';
import { latestPrice } from '../../weighing.js';
import { type Choices, type Match, type Matched, type Matcher, matcherOf } from './match.js';
import { misfit, nameTaken } from './misfit.js';
import type { Named } from './near.js';
import type { ListRead, ListRow, Refusal } from './rows.js';

/** A row and the pack it prices; `before` is the price that stood, null when there was none. */
export type Priced = { kind: Kind; row: ListRow; match: Match; before: Price | null };
export type Unmatched = { row: ListRow; near: Named[] };

/**
 * What a price list would do: prices where none stood (or a guess did), other prices, prices of a day before the one
 * that stands, the same prices, rows nobody has matched, rows left out, rows refused.
 */
export type Plan = {
  fresh: Priced[];
  changed: Priced[];
  older: Priced[];
  same: Priced[];
  unmatched: Unmatched[];
  leftOut: ListRow[];
  refused: Refusal[];
  /** Packs elsewhere that lose a code, because the cook said it means another. */
  uncoded: { ingredient: Ingredient; pack: Pack }[];
};

export type Kind = 'fresh' | 'changed' | 'older' | 'same';
export const kinds: readonly Kind[] = ['fresh', 'changed', 'older', 'same'];

type From = {
  ingredients: readonly Ingredient[];
  kitchen: Pick<Kitchen, 'cup'>;
  list: Pick<PriceList, 'supplier' | 'leftOut'>;
  choices: Choices;
};

/** Works out what a list read as it was would change; rows of one pack are taken day by day. */
export const planOf = ({ rows, refused }: ListRead, from: From): Plan => {
  const matcher = matcherOf(from.ingredients, from);
  const plan: Plan = {
    fresh: [],
    changed: [],
    older: [],
    same: [],
    unmatched: [],
    leftOut: [],
    refused: [...refused],
    uncoded: [],
  };
  const book: Book = {
    kitchen: from.kitchen,
    names: new Map(from.ingredients.map((one) => [normalName(one.name), one])),
    packs: new Map(),
    claimed: new Map(),
  };
  const matches = matchesOf(rows, matcher);
  for (const row of byDay(rows)) {
    const found = matches.get(row.id)!;
    if (found === 'out') plan.leftOut.push(row);
    else if (found === 'unmatched') plan.unmatched.push({ row, near: matcher.near(row.name) });
    else {
      const match = unclaimed(row, found, book);
      const sentence = price(row, match, plan, book);
      if (sentence) plan.refused.push({ line: row.line, name: row.name || row.id, sentence });
      else if (match.how === 'choice') uncode(matcher.coded(row.id), match, plan);
    }
  }
  plan.refused.sort((a, b) => a.line - b.line);
  return plan;
};

/** One code is one pack in all its rows, whatever they call it: the first name that is known counts. */
const matchesOf = (rows: readonly ListRow[], matcher: Matcher): ReadonlyMap<string, Matched> => {
  const matches = new Map<string, Matched>();
  for (const row of rows)
    if ((matches.get(row.id) ?? 'unmatched') === 'unmatched') matches.set(row.id, matcher.match(row));
  return matches;
};

type Book = {
  kitchen: Pick<Kitchen, 'cup'>;
  names: ReadonlyMap<string, Ingredient>;
  /** The packs the list spoke of so far, and which code took one that had none. */
  packs: Map<string, Target>;
  claimed: Map<string, string>;
};
type Target = { standing: Price | null; days: Map<string, number> };

/** A pack without a code goes to the first row of its name and size; another row of another code is another pack. */
const unclaimed = (row: ListRow, match: Match, { claimed }: Book): Match => {
  if (!match.pack || match.how === 'code') return match;
  const name = packName(row, match);
  const by = claimed.get(name) ?? row.id;
  claimed.set(name, by);
  return by === row.id ? match : { ...match, pack: null };
};

/** Notes the price of a matched row under its kind, or says why it can't be taken over. */
const price = (row: ListRow, match: Match, plan: Plan, book: Book): string | undefined => {
  const why = nameTaken(match, book.names) ?? misfit(row, match, book.kitchen);
  if (why) return why;
  const target = targetOf(row, match, book.packs);
  const twice = target.days.get(row.date);
  if (twice !== undefined) return `Line ${twice} has a price of that day for this pack already.`;
  target.days.set(row.date, row.line);
  const kind = kindOf(row, match, target);
  plan[kind].push({ kind, row, match, before: target.standing });
  if (kind === 'fresh' || kind === 'changed')
    target.standing = { key: '', date: row.date, price: row.price, guess: false };
  return undefined;
};

const uncode = (coded: Plan['uncoded'][number] | undefined, match: Match, { uncoded }: Plan): void => {
  if (coded && coded.pack !== match.pack && !uncoded.includes(coded)) uncoded.push(coded);
};

const byDay = (rows: readonly ListRow[]): readonly ListRow[] =>
  rows.some(({ date }) => date !== rows[0]!.date)
    ? rows.toSorted((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0))
    : rows;

/** What names the pack of a row within one list. */
export const packName = ({ id }: ListRow, { ingredient, pack }: Match): string =>
  JSON.stringify(pack ? [ingredient.key, pack.key] : [ingredient.key, ingredient.name, id, 'new']);

const targetOf = (row: ListRow, match: Match, packs: Map<string, Target>): Target => {
  const name = packName(row, match);
  const target = packs.get(name) ?? {
    standing: (match.pack && latestPrice(match.pack)) ?? null,
    days: new Map(),
  };
  packs.set(name, target);
  return target;
};

const kindOf = (row: ListRow, { pack }: Match, { standing }: Target): Kind => {
  if (!standing) return 'fresh';
  if (row.date < standing.date)
    return pack?.prices.some((one) => one.date === row.date && one.price === row.price && !one.guess)
      ? 'same'
      : 'older';
  if (standing.guess) return 'fresh';
  return row.price === standing.price ? 'same' : 'changed';
};

/** How much dearer a price is than the one that stood, in per cent of that one; undefined where none stood, or 0. */
export const riseOf = ({ row, before }: Pick<Priced, 'row' | 'before'>): Rational | undefined =>
  before && before.price > 0 ? Rational.of((row.price - before.price) * 100, before.price) : undefined;

/** Changed prices, those that rise most first. */
export const byRise = (changed: readonly Priced[]): Priced[] =>
  changed
    .map((priced) => ({ priced, rise: riseOf(priced) ?? Rational.zero }))
    .sort((a, b) => b.rise.compare(a.rise) || a.priced.row.line - b.priced.row.line)
    .map(({ priced }) => priced);
