import { batchesFor, cupOf, makes, statedBy } from '../batch.js';
import type { Facts } from '../facts/facts.js';
import type { Cup } from '../facts/kitchen.js';
import type { Line, Recipe } from '../facts/recipe.js';
import { isGap, share, upperEnd } from '../flour.js';
import { grown } from '../growth.js';
import { noFlour } from '../line-problems.js';
import { ingredientOf } from '../lookup.js';
import type { Problem } from '../problem.js';
import { noLines, noYield } from '../problems.js';
import { Rational } from '../quantity/rational.js';
import { quantity } from '../quantity/units.js';
import type { Priced } from './priced-by.js';
import type { SumsWritten } from './sums.js';
import type { UnitCosts } from './unit-costs.js';

/** A recipe written down, by the names that its costs have among the sums. */
export type Written = {
  recipe: Recipe;
  order: number;
  priced: Priced | undefined;
  /** What its straight ingredient lines cost in one batch; and what one batch costs with all that is in it. */
  straight: number;
  cost: number;
  uses: Use[];
  bent: Bent[];
  /** true when twice the batches take twice of everything below, so that its cost says all of it. */
  even: boolean;
  /** true when a use below isn't known; as in scaling, that leaves open every use of the same component. */
  unknown: boolean;
  /** What leaves its own lines open. */
  reasons: Problem[];
  /** While the cost of another is written: which one, and the batches of this that it takes. */
  by: Written | undefined;
  made: Rational | undefined;
};

/** A line that doesn't grow straight with the batches: by the piece, a herb, a fixed amount. */
type Grows = { base: Rational; unit: string; scales: Line['scales'] };

/** Such an ingredient line, of what its unit costs. */
export type Bent = Grows & { of: number };

/** A component line, and the batches it takes at one batch of its recipe; undefined when not known. */
export type Use = { of: Written; taste: boolean; batches: Rational | undefined; grows: Grows | undefined };

/** Where the recipes of a kitchen are written down. */
export type Book = {
  facts: Facts;
  sums: SumsWritten;
  units: UnitCosts;
  written: Map<string, Written>;
};

const bends: ReadonlySet<Line['scales']> = new Set(['pieces', 'herb', 'chilli', 'batch']);

/** Reads the lines of a recipe: those that are straight go into the next sum, the others are kept for later. */
export const readLines = (one: Written, book: Book): void => {
  const { lines } = one.recipe;
  const cup = cupOf(one.recipe, book.facts);
  if (lines.length === 0) one.reasons.push(noLines(one.recipe));
  // By number: a hundred thousand lines are read so, and an iterator leaves something to be cleared away for each.
  for (let i = 0; i < lines.length; i += 1) readLine(lines[i]!, cup, one, book);
};

const readLine = (line: Line, cup: Cup, one: Written, book: Book): void => {
  const { item, scales } = line;
  if (line.amount === null) {
    if ('component' in item) one.uses.push(toTaste(item.component, book));
    return;
  }
  const stated = line.unit === share ? shareBy(line, one, book) : undefined;
  const base = stated ? stated.amount : upperEnd(line)!;
  const unit = stated ? stated.unit : line.unit;
  if ('component' in item) {
    const of = book.written.get(item.component)!;
    const batches = stated?.open ? undefined : taken(of, base, unit, scales, cup, book.facts);
    if (!batches && !stated?.open) one.reasons.push(noYield(of.recipe, unit));
    one.uses.push({
      of,
      taste: false,
      batches,
      grows: bends.has(scales) ? { base, unit, scales } : undefined,
    });
    return;
  }
  const of = book.units.of(item.ingredient, unit, cup, line, one.recipe);
  if (bends.has(scales)) one.bent.push({ of, base, unit, scales });
  else book.sums.part(of, base);
};

const toTaste = (component: string, { written }: Book): Use => ({
  of: written.get(component)!,
  taste: true,
  batches: Rational.zero,
  grows: undefined,
});

/** A per cent of the flour as the grams that come to; nothing where that isn't known, and then the line is open. */
const shareBy = (line: Line, { recipe, reasons }: Written, { facts, written }: Book) => {
  const stated = statedBy(line, recipe, facts)!;
  if (!isGap(stated)) return { ...stated, open: false };
  const { item } = line;
  const what =
    'component' in item ? written.get(item.component)!.recipe : ingredientOf(item.ingredient, facts);
  if (!('notBought' in what && what.notBought)) reasons.push(noFlour(recipe, line, what.name, stated));
  return { amount: Rational.zero, unit: 'g', open: true };
};

const taken = (
  { recipe }: Written,
  base: Rational,
  unit: string,
  scales: Line['scales'],
  cup: Cup,
  facts: Facts,
  made = Rational.one,
): Rational | undefined =>
  batchesFor(makes(recipe, facts), quantity(grown(base, unit, scales, made), unit, cup));

/** Batches of a component that a line takes at so many batches of its recipe; undefined when not known. */
export const takenAt = (
  { of, taste, batches, grows }: Use,
  recipe: Recipe,
  made: Rational | undefined,
  facts: Facts,
): Rational | undefined => {
  if (taste || made === Rational.one) return batches;
  if (!made || !batches) return undefined;
  if (!grows) return batches.times(made);
  const { base, unit, scales } = grows;
  return taken(of, base, unit, scales, cupOf(recipe, facts), facts, made);
};
