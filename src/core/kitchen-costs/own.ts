import { batchesFor, cupOf, type Makes, statedBy } from '../batch.js';
import type { Cup } from '../facts/kitchen.js';
import type { Line, Recipe } from '../facts/recipe.js';
import { isGap, share, upperEnd } from '../flour.js';
import { grown } from '../growth.js';
import { noFlour } from '../line-problems.js';
import { ingredientOf } from '../lookup.js';
import { noLines, noYield } from '../problems.js';
import { Rational } from '../quantity/rational.js';
import { quantity } from '../quantity/units.js';
import type { Book, Grows, Use } from './book.js';
import { itemsOf } from './items.js';

const bends: ReadonlySet<Line['scales']> = new Set(['pieces', 'herb', 'chilli', 'batch']);

/** Reads the lines of a recipe: those that are straight go into the next sum, the others are kept for later. */
export const readLines = (recipe: Recipe, book: Book): void => {
  const { lines } = recipe;
  const cup = cupOf(recipe, book.facts);
  if (lines.length === 0) book.because(noLines(recipe));
  // By number: a hundred thousand lines are read so, and an iterator leaves something to be cleared away for each.
  const items = itemsOf(recipe).of;
  for (let i = 0; i < lines.length; i += 1) readLine(lines[i]!, items[i]!, cup, recipe, book);
};

const readLine = (line: Line, item: number, cup: Cup, recipe: Recipe, book: Book): void => {
  const { scales } = line;
  const component = item < 0 ? book.numberOf(-1 - item) : undefined;
  if (line.amount === null) {
    if (component !== undefined) book.uses.push({ ...toTaste, of: component });
    return;
  }
  const stated = line.unit === share ? shareBy(line, component, recipe, book) : undefined;
  const base = stated ? stated.amount : upperEnd(line)!;
  const unit = stated ? stated.unit : line.unit;
  if (component !== undefined) {
    const of = component;
    const batches = stated?.open
      ? undefined
      : batchesOf(book.makes[of]!, grown(base, unit, scales, Rational.one), unit, cup);
    if (!batches && !stated?.open) book.because(noYield(book.recipes[of]!, unit));
    const grows = bends.has(scales) ? { base, unit, scales } : undefined;
    book.uses.push({ of, taste: false, batches, grows });
    return;
  }
  const of = book.units.of(item, unit, cup, line, recipe);
  if (bends.has(scales)) book.bent.push({ of, base, unit, scales });
  else book.sums.part(of, base);
};

const toTaste: Omit<Use, 'of'> = { taste: true, batches: Rational.zero, grows: undefined };

/** A per cent of the flour as the grams that come to; nothing where that isn't known, and then the line is open. */
const shareBy = (line: Line, component: number | undefined, recipe: Recipe, book: Book) => {
  const { facts, recipes } = book;
  const stated = statedBy(line, recipe, facts)!;
  if (!isGap(stated)) return { ...stated, open: false };
  const { item } = line;
  const what = 'ingredient' in item ? ingredientOf(item.ingredient, facts) : recipes[component!]!;
  if (!('notBought' in what && what.notBought)) book.because(noFlour(recipe, line, what.name, stated));
  return { amount: Rational.zero, unit: 'g', open: true };
};

const batchesOf = (makes: Makes, amount: Rational, unit: string, cup: Cup): Rational | undefined =>
  batchesFor(makes, quantity(amount, unit, cup));

/** Batches of a component that a line takes at so many batches of its recipe; undefined when not known. */
export const takenAt = (
  { of, taste, batches, grows }: Use,
  made: Rational | undefined,
  recipe: Recipe,
  { makes, facts }: Book,
): Rational | undefined => {
  if (taste || made === Rational.one) return batches;
  if (!made || !batches) return undefined;
  if (!grows) return batches.times(made);
  const { base, unit, scales }: Grows = grows;
  return batchesOf(makes[of]!, grown(base, unit, scales, made), unit, cupOf(recipe, facts));
};
