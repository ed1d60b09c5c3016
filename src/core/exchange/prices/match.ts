import type { Ingredient, Pack } from '../../facts/ingredient.js';
import type { Kitchen } from '../../facts/kitchen.js';
import type { PriceList } from '../../facts/price-list.js';
import { normalName } from '../../names.js';
import { exact } from '../../quantity/amount.js';
import { quantity } from '../../quantity/units.js';
import { type Finder, finderOf, type Named } from './near.js';
import type { ListRow } from './rows.js';

/** What the cook said about a row: which ingredient it is, a new one, never ask again, or that a match is wrong. */
export type Choice =
  | { to: 'ingredient'; ingredient: string }
  | { to: 'new'; name: string }
  | { to: 'out' }
  | { to: 'ask' };
export type Choices = Readonly<Record<string, Choice>>;

/** Which pack a row speaks of: one there is, or a new one of an ingredient there is or of a new one. */
export type Match = {
  how: 'code' | 'name' | 'choice';
  /** A name without a key is an ingredient still to be made. */
  ingredient: Ingredient | { key: null; name: string };
  pack: Pack | null;
  /** The pack that bore the code until now, where another size or brand came under it. */
  instead: Pack | null;
};
export type Matched = Match | 'out' | 'unmatched';

type Sold = { ingredient: Ingredient; pack: Pack };

/** Matches rows of one supplier's list with packs. */
export type Matcher = Finder & {
  match(row: ListRow): Matched;
  /** The pack that bears a row's code, wherever it is. */
  coded(id: string): Sold | undefined;
};

export const matcherOf = (
  ingredients: readonly Ingredient[],
  {
    list,
    choices,
    kitchen,
  }: { list: Pick<PriceList, 'supplier' | 'leftOut'>; choices: Choices; kitchen: Pick<Kitchen, 'cup'> },
): Matcher => {
  const supplier = normalName(list.supplier);
  const finder = finderOf(ingredients);
  const byKey = new Map(ingredients.map((one) => [one.key, one]));
  const leftOut = new Set(list.leftOut);
  const codes = new Map<string, Sold>();
  for (const ingredient of ingredients)
    if (!ingredient.archived)
      for (const pack of ingredient.packs)
        if (pack.code !== '' && normalName(pack.supplier) === supplier && !codes.has(pack.code))
          codes.set(pack.code, { ingredient, pack });

  const ofIngredient = (row: ListRow, named: Named, how: Match['how']): Match => {
    const ingredient = byKey.get(named.key)!;
    const pack = ingredient.packs.find(
      (one) =>
        normalName(one.supplier) === supplier &&
        (one.code === '' || one.code === row.id) &&
        row.size !== null &&
        sameSize(one, row, kitchen) &&
        sameBrand(one, row),
    );
    return { how, ingredient, pack: pack ?? null, instead: null };
  };

  const match = (row: ListRow): Matched => {
    const choice = Object.hasOwn(choices, row.id) ? choices[row.id] : undefined;
    if (choice?.to === 'out') return 'out';
    if (choice?.to === 'ask') return 'unmatched';
    if (choice?.to === 'ingredient' && byKey.has(choice.ingredient))
      return ofIngredient(row, { key: choice.ingredient, name: '' }, 'choice');
    const sold = codes.get(row.id);
    if (sold && !choice) {
      const fits = (row.size === null || sameSize(sold.pack, row, kitchen)) && sameBrand(sold.pack, row);
      return {
        how: 'code',
        ingredient: sold.ingredient,
        pack: fits ? sold.pack : null,
        instead: fits ? null : sold.pack,
      };
    }
    if (choice?.to === 'new') {
      const there = finder.same(choice.name);
      return there
        ? ofIngredient(row, there, 'choice')
        : { how: 'choice', ingredient: { key: null, name: choice.name }, pack: null, instead: null };
    }
    if (leftOut.has(row.id)) return 'out';
    const there = finder.same(row.name);
    return there ? ofIngredient(row, there, 'name') : 'unmatched';
  };

  return { ...finder, match, coded: (id) => codes.get(id) };
};

const sameSize = (pack: Pack, row: ListRow, { cup }: Pick<Kitchen, 'cup'>): boolean => {
  if (!row.size) return false;
  const [a, b] = [pack.size, row.size].map(({ amount, unit }) => quantity(exact(amount), unit, cup));
  return a!.base === b!.base && a!.value.equals(b!.value);
};

const sameBrand = (pack: Pack, row: ListRow): boolean =>
  row.brand === '' || pack.brand === '' || normalName(pack.brand) === normalName(row.brand);
