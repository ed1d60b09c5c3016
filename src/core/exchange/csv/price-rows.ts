import type { Ingredient, Pack } from '../../facts/ingredient.js';
import { keyFrom } from '../../keys.js';
import { labelForgotten, labelInDoubt } from '../../label-again.js';
import { same } from '../../merge.js';
import { fieldsFrom } from './columns.js';
import { type Found, type Raw, type Reader, type Refused, shaped } from './reader.js';
import { inMinor, nodes } from './tables.js';

/**
 * prices.csv: each row a price of a pack of an ingredient there is. One that gets another brand or preferred pack is as
 * if its label were not read.
 */
export const prices: Reader = (rows, columns, kept) => {
  const [packOf, priceOf] = [
    fieldsFrom(nodes.pack, 'pack', columns),
    fieldsFrom(nodes.price, 'price', columns),
  ];
  if ('sentence' in packOf) return packOf;
  if ('sentence' in priceOf) return priceOf;
  const refused: Refused[] = [];
  const there = new Map(kept.ingredients.map((one) => [one.key, one]));
  const made = new Map<string, { line: number; doc: Ingredient; packs: Map<string, Raw> }>();
  for (const { line, cells } of rows) {
    const key = columns.cell(cells, 'ingredient').trim();
    const before = there.get(key);
    if (!before) {
      const name = columns.cell(cells, 'name') || key;
      refused.push({
        line,
        name,
        sentence: `There is no ingredient with the key “${key}”: bring ingredients.csv in first.`,
      });
      continue;
    }
    const one = made.get(key) ?? { line, doc: withKeyedPacks(before), packs: new Map<string, Raw>() };
    made.set(key, one);
    const sentence = addPrice(one, packOf(cells), priceOf(cells), kept.kitchen.currency);
    if (sentence) refused.push({ line, name: before.name, sentence });
  }
  const found = [...made].flatMap(([key, { line, doc }]): Found<'ingredient'>[] => {
    const parsed = shaped('ingredient', doc, () => line, refused);
    return parsed ? [{ line, doc: unread(parsed, there.get(key)!), before: there.get(key) }] : [];
  });
  return { entity: 'ingredient', found, refused };
};

const unread = (doc: Ingredient, before: Ingredient): Ingredient =>
  labelInDoubt(before, doc) > 0 ? { ...doc, ...labelForgotten(doc) } : doc;

const withKeyedPacks = (doc: Ingredient): Ingredient => ({
  ...doc,
  packs: doc.packs.map((pack) => ({ ...pack, prices: [...pack.prices] })),
});

/** Puts one row's price into an ingredient; what is not in the file stays. A sentence when the row contradicts another. */
const addPrice = (
  { doc, packs }: { doc: Ingredient; packs: Map<string, Raw> },
  pack: Raw,
  price: Raw,
  currency: string,
): string | undefined => {
  const key = String(pack.key ?? '');
  const said = packs.get(key);
  if (said && !same(said, pack)) return `Another row says something else of the pack “${key}”.`;
  packs.set(key, pack);
  const at = doc.packs.findIndex((one) => one.key === key);
  const before = doc.packs[at];
  const now = { ...before, ...pack, prices: before?.prices ?? [] } as Pack;
  if (at < 0) doc.packs.push(now);
  else doc.packs[at] = now;
  if (Object.entries(price).every(([name, value]) => name === 'guess' || value === '' || value === undefined))
    return undefined;
  const date = String(price.date ?? '');
  const own = String(price.key || keyFrom(date, (one) => now.prices.some((other) => other.key === one)));
  const written = { ...price, key: own, price: inMinor(String(price.price ?? ''), currency) };
  const old = now.prices.findIndex((one) => one.key === own);
  if (old < 0) now.prices.push(written as never);
  else now.prices[old] = written as never;
  return undefined;
};
