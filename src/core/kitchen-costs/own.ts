import { batchesFor, cupOf, makes } from '../batch.js';
import type { Facts } from '../facts/facts.js';
import type { Line, Recipe } from '../facts/recipe.js';
import { share, upperEnd } from '../flour.js';
import { lineNeed } from '../line-need.js';
import type { Problem } from '../problem.js';
import { noLines, noYield } from '../problems.js';
import { Rational } from '../quantity/rational.js';
import { baseOf, quantity } from '../quantity/units.js';
import { statesBought } from '../weighing.js';
import type { SumsWritten } from './sums.js';
import type { UnitCosts } from './unit-costs.js';

/** A recipe written down, by the names that its costs have among the sums. */
export type Written = {
  recipe: Recipe;
  order: number;
  /** What its straight ingredient lines cost in one batch; and what one batch costs with all that is in it. */
  straight: number;
  cost: number;
  uses: Use[];
  /** Ingredient lines that don't grow straight with the batches: by the piece, herbs, fixed amounts. */
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

/** So much of a figure among the sums. */
export type Part = { of: number; much: Rational };
export type Bent = { line: Line; one: Part };

/** A component line at one batch: the batches of it that it takes, undefined when not known. */
export type Use = { of: Written; line: Line; bent: boolean; batches: Rational | undefined };

/** Where the recipes of a kitchen are written down. */
export type Book = {
  facts: Facts;
  sums: SumsWritten;
  units: UnitCosts;
  written: Map<string, Written>;
};

const bends: ReadonlySet<Line['scales']> = new Set(['pieces', 'herb', 'chilli', 'batch']);

/** Reads the lines of a recipe: those that are straight go into the next sum, the others are kept for later. */
export const readLines = ({ recipe, uses, bent, reasons }: Written, book: Book): void => {
  if (recipe.lines.length === 0) reasons.push(noLines(recipe));
  for (const line of recipe.lines) {
    const bends = line.amount !== null && bendsWith(line);
    if ('component' in line.item) uses.push(useOf(line, bends, recipe, reasons, book));
    else if (line.amount === null) continue;
    else if (!bends && isPlain(line)) plainPart(line, line.item.ingredient, recipe, book);
    else {
      const part = partAt(line, recipe, Rational.one, book);
      reasons.push(...part.reasons);
      if (bends) bent.push({ line, one: part });
      else book.sums.part(part.of, part.much);
    }
  }
};

const bendsWith = ({ scales }: Line): boolean => bends.has(scales);

/** A line whose unit says all. */
const isPlain = ({ unit, stated }: Line): boolean => unit !== share && stated !== 'cooked';

const plainPart = (line: Line, ingredient: string, recipe: Recipe, { facts, sums, units }: Book): void => {
  const { unit, stated } = line;
  const bought = stated === 'usual' ? statesBought(line, baseOf(unit)) : stated === 'bought';
  sums.part(units.asLine(ingredient, unit, cupOf(recipe, facts), bought), upperEnd(line)!);
};

/** An ingredient line that doesn't grow straight, at so many batches; where these aren't known it counts nothing. */
export const bentAt = ({ line, one }: Bent, recipe: Recipe, made: Rational | undefined, book: Book): Part => {
  if (made === Rational.one) return one;
  return made ? partAt(line, recipe, made, book) : { of: one.of, much: Rational.zero };
};

/** An ingredient line at so many batches, as so much of what one as bought costs, with what leaves that open. */
const partAt = (line: Line, recipe: Recipe, batches: Rational, { facts, units }: Book) => {
  const { ingredient, bought, problems } = lineNeed(line, recipe, batches, facts);
  return {
    of: units.asBought(ingredient!.key, bought?.base),
    much: bought?.value ?? Rational.zero,
    reasons: bought || ingredient!.notBought ? [] : problems.filter(({ weight }) => weight !== 'check'),
  };
};

const useOf = (line: Line, bent: boolean, recipe: Recipe, reasons: Problem[], book: Book): Use => {
  const of = book.written.get((line.item as { component: string }).component)!;
  const use: Use = { of, line, bent, batches: Rational.zero };
  if (line.amount === null) return use;
  if (isPlain(line) && !bent) {
    const asked = quantity(upperEnd(line)!, line.unit, cupOf(recipe, book.facts));
    use.batches = batchesFor(makes(of.recipe, book.facts), asked);
    if (!use.batches) reasons.push(noYield(of.recipe, line.unit));
    return use;
  }
  const { batches, problems, unit } = lineNeed(line, recipe, Rational.one, book.facts);
  use.batches = batches;
  const gaps = problems.filter(({ weight }) => weight !== 'check');
  if (!batches) reasons.push(...(gaps.length > 0 ? gaps : [noYield(of.recipe, unit)]));
  return use;
};

/** Batches of a component that a line takes at so many batches of its recipe; undefined when not known. */
export const takenAt = (
  { line, bent, batches }: Use,
  recipe: Recipe,
  made: Rational | undefined,
  facts: Facts,
): Rational | undefined => {
  if (line.amount === null || made === Rational.one) return batches;
  if (!made || !batches) return undefined;
  return bent ? lineNeed(line, recipe, made, facts).batches : batches.times(made);
};
