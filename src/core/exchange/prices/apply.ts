import { type Ingredient, ingredient, type Pack } from '../../facts/ingredient.js';
import { keyFrom } from '../../keys.js';
import { normalName } from '../../names.js';
import { type Plan, type Priced, packName } from './plan.js';

/** What becomes of one ingredient; `key` is null for one still to be made, by its name. */
export type Revision = { key: string | null; name: string; priced: Priced[]; uncoded: string[] };

/** What a plan writes, ingredient by ingredient: same prices write nothing, unless a pack is to bear a code from now on. */
export const revisionsOf = (plan: Plan): Revision[] => {
  const found = new Map<string, Revision>();
  const of = (key: string | null, name: string): Revision => {
    const id = key ?? ` ${normalName(name)}`;
    const revision = found.get(id) ?? { key, name, priced: [], uncoded: [] };
    found.set(id, revision);
    return revision;
  };
  for (const { ingredient, pack } of plan.uncoded) of(ingredient.key, ingredient.name).uncoded.push(pack.key);
  for (const priced of [...plan.fresh, ...plan.changed, ...plan.older, ...plan.same.filter(newlyCoded)])
    of(priced.match.ingredient.key, priced.match.ingredient.name).priced.push(priced);
  return [...found.values()];
};

const newlyCoded = ({ row, match }: Priced): boolean => match.pack !== null && match.pack.code !== row.id;

/** An ingredient with the prices of a list; lines stay priced at the pack they were priced at. */
export const withPrices = (
  doc: Ingredient,
  { priced, uncoded }: Pick<Revision, 'priced' | 'uncoded'>,
  supplier: string,
): Ingredient => {
  const packs = new Map(
    doc.packs.map((pack) => [pack.key, { ...pack, code: uncoded.includes(pack.key) ? '' : pack.code }]),
  );
  const added = new Map<string, string>();
  for (const one of priced) {
    const { row, match } = one;
    const name = packName(row, match);
    const key = match.pack?.key ?? added.get(name) ?? newKey(supplier, row.brand, packs);
    if (match.instead) uncode(packs, match.instead.key);
    if (!packs.has(key)) {
      packs.set(key, {
        key,
        supplier,
        brand: row.brand,
        code: row.id,
        size: row.size!,
        preferred: false,
        prices: [],
      });
      added.set(name, key);
    }
    const pack = packs.get(key)!;
    packs.set(key, {
      ...pack,
      code: row.id,
      prices: one.kind === 'same' ? pack.prices : [...pack.prices, priceOf(row, pack)],
    });
  }
  const all = [...packs.values()];
  const [only] = doc.packs;
  const keep = doc.packs.length === 1 && all.length > 1 ? only!.key : undefined;
  return { ...doc, packs: all.map((pack) => (pack.key === keep ? { ...pack, preferred: true } : pack)) };
};

const uncode = (packs: Map<string, Pack>, key: string): void => {
  const pack = packs.get(key);
  if (pack) packs.set(key, { ...pack, code: '' });
};

const newKey = (supplier: string, brand: string, packs: ReadonlyMap<string, Pack>): string =>
  keyFrom(`${supplier} ${brand}`, (key) => packs.has(key));

const priceOf = ({ date, price }: Priced['row'], { prices }: Pack) => ({
  key: keyFrom(date, (key) => prices.some((one) => one.key === key)),
  date,
  price,
  guess: false,
});

/** A new ingredient of a list, with its prices. */
export const newIngredient = (
  { name, priced }: Revision,
  supplier: string,
  taken: (key: string) => boolean,
): Ingredient =>
  withPrices(
    ingredient.parse({
      key: keyFrom(name, taken),
      name,
      section: priced.find(({ row }) => row.section)?.row.section ?? '',
    }),
    { priced, uncoded: [] },
    supplier,
  );
