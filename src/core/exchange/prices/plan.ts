import type { Ingredient, Pack, Price } from '../../facts/ingredient.js';
import type { Kitchen } from '../../facts/kitchen.js';
import type { PriceList } from '../../facts/price-list.js';
import { normalName } from '../../names.js';
import { exact } from '../../quantity/amount.js';
import { Rational } from '../../quantity/rational.js';
import { quantity } from '../../quantity/units.js';
import { boughtIn, isMissing, latestPrice, preferredPack } from '../../weighing.js';
import { type Choices, type Match, matcherOf } from './match.js';
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

const mostPrices = 2000;
const mostPacks = 60;

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
  const packs = new Map<string, Target>();
  const names = new Map(from.ingredients.map((one) => [normalName(one.name), one]));
  const refuse = ({ line, name, id }: ListRow, sentence: string) =>
    plan.refused.push({ line, name: name || id, sentence });
  for (const row of byDay(rows)) {
    const match = matcher.match(row);
    if (match === 'out') plan.leftOut.push(row);
    else if (match === 'unmatched') plan.unmatched.push({ row, near: matcher.near(row.name) });
    else {
      const why = nameTaken(match, names) ?? misfit(row, match, from.kitchen);
      if (why) {
        refuse(row, why);
        continue;
      }
      const target = targetOf(row, match, packs);
      const twice = target.days.get(row.date);
      if (twice !== undefined) {
        refuse(row, `Line ${twice} has a price of that day for this pack already.`);
        continue;
      }
      target.days.set(row.date, row.line);
      const kind = kindOf(row, match, target);
      plan[kind].push({ kind, row, match, before: target.standing });
      if (kind === 'fresh' || kind === 'changed')
        target.standing = { key: '', date: row.date, price: row.price, guess: false };
      const coded = match.how === 'choice' ? matcher.coded(row.id) : undefined;
      if (coded && coded.pack !== match.pack && !plan.uncoded.includes(coded)) plan.uncoded.push(coded);
    }
  }
  plan.refused.sort((a, b) => a.line - b.line);
  return plan;
};

const byDay = (rows: readonly ListRow[]): readonly ListRow[] =>
  rows.some(({ date }) => date !== rows[0]!.date)
    ? rows.toSorted((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0))
    : rows;

type Target = { standing: Price | null; days: Map<string, number> };

/** What names the pack of a row within one list. */
export const packName = ({ size, brand }: ListRow, { ingredient, pack }: Match): string =>
  JSON.stringify(
    pack
      ? [ingredient.key, pack.key]
      : [ingredient.key, ingredient.name, size?.amount, size?.unit, brand.toLowerCase()],
  );

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

const nameTaken = ({ ingredient }: Match, names: ReadonlyMap<string, Ingredient>): string | undefined => {
  const there = ingredient.key === null ? names.get(normalName(ingredient.name)) : undefined;
  if (!there) return undefined;
  return there.archived
    ? `${there.name} is archived: bring it back first, or give the new one another name.`
    : `There is an ingredient ${there.name} already: choose it, or give the new one another name.`;
};

/** Why a matched row can't be taken over; undefined when it can. */
const misfit = (
  row: ListRow,
  { ingredient, pack }: Match,
  kitchen: Pick<Kitchen, 'cup'>,
): string | undefined => {
  if (pack && pack.prices.length >= mostPrices) return `This pack has ${mostPrices} prices already.`;
  if (pack) return undefined;
  if (!row.size) return 'The list says no pack size, and there is no pack under this code yet.';
  if (ingredient.key === null) return undefined;
  if (ingredient.notBought) return `${ingredient.name} is marked as not bought.`;
  if (ingredient.packs.length >= mostPacks) return `${ingredient.name} has ${mostPacks} packs already.`;
  const used = preferredPack(ingredient);
  if (!used) return undefined;
  const base = (unit: string) => quantity(Rational.one, unit, kitchen.cup);
  const held = quantity(exact(row.size.amount), row.size.unit, kitchen.cup);
  const found = boughtIn(ingredient, held, base(used.size.unit).base);
  if (!isMissing(found)) return undefined;
  const lacks =
    found.missing === 'density'
      ? 'its density is'
      : found.missing === 'yield'
        ? 'its edible yield is'
        : `what one ${found.unit} weighs is`;
  return `A pack in ${row.size.unit} can’t be compared with the pack of ${ingredient.name} in ${used.size.unit}: ${lacks} not known.`;
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
