import { type Ingredient, ingredient, pack, price } from '../../facts/ingredient.js';
import type { Kitchen } from '../../facts/kitchen.js';
import { line, type Recipe, recipe, step } from '../../facts/recipe.js';
import { minorDigits } from '../../money.js';
import { Rational } from '../../quantity/rational.js';
import { harmless } from './harmless.js';
import { cellsOf, headsOf, type Node, nodeOf, widthOf } from './nodes.js';
import { csvText } from './write.js';

/** The tables a kitchen's facts leave in, and come back from. */
export const tableNames = ['ingredients', 'prices', 'recipes'] as const;
export type TableName = (typeof tableNames)[number];

export const nodes = {
  ingredient: nodeOf(ingredient, ['packs']),
  pack: nodeOf(pack, ['prices']),
  price: nodeOf(price),
  recipe: nodeOf(recipe, ['lines', 'steps']),
  line: nodeOf(line),
  step: nodeOf(step),
};

/** The heading of every column, in order. */
export const headings: Readonly<Record<TableName, readonly string[]>> = {
  ingredients: headsOf(nodes.ingredient, ''),
  prices: ['ingredient', 'name', ...headsOf(nodes.pack, 'pack'), ...headsOf(nodes.price, 'price')],
  recipes: [
    'row',
    ...headsOf(nodes.recipe, ''),
    ...headsOf(nodes.line, 'line'),
    ...headsOf(nodes.step, 'step'),
  ],
};

export type Kept = { kitchen: Kitchen; ingredients: readonly Ingredient[]; recipes: readonly Recipe[] };

/**
 * One table of a kitchen as CSV: one row for an ingredient; one for each price of each pack, or for a pack without
 * one; one for each recipe, and below it one for each of its lines and steps. A list within a cell is a small CSV of
 * its own. The same facts always give the same text.
 */
export const tableText = (name: TableName, kept: Kept): string =>
  csvText([headings[name], ...rows[name](kept)].map((cells) => cells.map(harmless)));

const byKey = <T extends { key: string }>(list: readonly T[]): T[] =>
  list.toSorted((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0));

const blank = (node: Node): string[] => Array.from({ length: widthOf(node) }, () => '');

const rows: Record<TableName, (kept: Kept) => string[][]> = {
  ingredients: ({ ingredients }) => byKey(ingredients).map((one) => cellsOf(nodes.ingredient, one)),
  prices: ({ kitchen, ingredients }) =>
    byKey(ingredients).flatMap(({ key, name, packs }) =>
      packs.flatMap(({ prices, ...one }) => {
        const start = [key, name, ...cellsOf(nodes.pack, one)];
        if (prices.length === 0) return [[...start, ...blank(nodes.price)]];
        return prices.map((paid) => [
          ...start,
          ...cellsOf(nodes.price, { ...paid, price: inMajor(paid.price, kitchen.currency) }),
        ]);
      }),
    ),
  recipes: ({ recipes }) =>
    byKey(recipes).flatMap((one) => {
      const named = cellsOf(nodes.recipe, { key: one.key, name: one.name });
      const [lines, steps] = [blank(nodes.line), blank(nodes.step)];
      return [
        ['recipe', ...cellsOf(nodes.recipe, one), ...lines, ...steps],
        ...one.lines.map((each) => ['line', ...named, ...cellsOf(nodes.line, each), ...steps]),
        ...one.steps.map((each) => ['step', ...named, ...lines, ...cellsOf(nodes.step, each)]),
      ];
    }),
};

/** Minor units as money is written: 340 is "3.40" in pounds, "340" in yen. */
const inMajor = (minor: number, currency: string): string => {
  const digits = minorDigits(currency);
  return Rational.of(minor, 10n ** BigInt(digits)).toFixed(digits);
};

/** Money as it is written in such a table, in minor units; text that is none stays as it is. */
export const inMinor = (cell: string, currency: string): number | string => {
  const plain = cell.trim().replace(/^(\d+),(\d+)$/, '$1.$2');
  if (!/^\d{1,13}(\.\d{1,9})?$/.test(plain)) return cell;
  const minor = Rational.parse(plain).times(Rational.of(10n ** BigInt(minorDigits(currency))));
  return minor.isWhole ? Number(minor.n) : cell;
};
