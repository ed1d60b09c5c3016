import { type Makes, makes } from '../batch.js';
import type { Facts } from '../facts/facts.js';
import type { Line, Recipe } from '../facts/recipe.js';
import type { Problem } from '../problem.js';
import type { Rational } from '../quantity/rational.js';
import { itemsOf, numbersGiven } from './items.js';
import { open, type SumsWritten } from './sums.js';
import type { UnitCosts } from './unit-costs.js';

/** A line that doesn't grow straight with the batches: by the piece, a herb, a fixed amount. */
export type Grows = { base: Rational; unit: string; scales: Line['scales'] };

/** Such an ingredient line, of what its unit costs. */
export type Bent = Grows & { of: number };

/** A component line: of which recipe, and the batches it takes at one batch of its own; undefined when not known. */
export type Use = { of: number; taste: boolean; batches: Rational | undefined; grows: Grows | undefined };

/** Recipes whose own lines must be looked at, each before its components, and those whose cost will do; so many of each. */
export type Below = { opened: Int32Array; opens: number; closed: Int32Array; closes: number };

/**
 * The recipes of a kitchen as they are written down, each by a number, components first. What is asked about a recipe
 * for every use of it stands in columns: ten thousand objects would not stay in the processor's cache.
 */
export class Book {
  readonly recipes: Recipe[] = [];
  readonly makes: Makes[] = [];
  /** What its straight ingredient lines cost in one batch; and what one batch costs with all that is in it. */
  readonly straight: number[] = [];
  readonly cost: number[] = [];
  /** true when twice the batches take twice of everything below, so that its cost says all of it. */
  readonly even: boolean[] = [];
  /** true when a use below isn't known; as in scaling, that leaves open every use of the same component. */
  readonly unknown: boolean[] = [];
  /** While the cost of another is written: which one, and the batches of this that it takes. */
  readonly by: number[] = [];
  readonly taken: (Rational | undefined)[] = [];
  /** The component lines of all, and the lines that bend; those of a recipe end where the next one's begin. */
  readonly uses: Use[] = [];
  readonly bent: Bent[] = [];
  readonly usesFrom: number[] = [0];
  readonly bentFrom: number[] = [0];
  /** One above the number here of a recipe, by its number among all keys; 0 while it is not written. */
  private written = new Int32Array(numbersGiven().recipes);
  /** For one at a time: what is below the recipe whose cost is written. */
  readonly below: Below;
  /** What leaves a recipe's own lines open, where anything does. */
  readonly reasons = new Map<number, Problem[]>();

  constructor(
    readonly facts: Facts,
    readonly sums: SumsWritten,
    readonly units: UnitCosts,
  ) {
    const { size } = facts.recipes;
    this.below = { opened: new Int32Array(size), opens: 0, closed: new Int32Array(size), closes: 0 };
  }

  /** The number here of a recipe, by its number among all keys; below 0 while it is not written. */
  numberOf(item: number): number {
    return (this.written[item] ?? 0) - 1;
  }

  /** The number of the recipe that is written down next, and its lines with it. */
  get next(): number {
    return this.recipes.length;
  }

  /** Says what leaves the lines open that are written down next. */
  because(problem: Problem): void {
    const known = this.reasons.get(this.next);
    if (known) known.push(problem);
    else this.reasons.set(this.next, [problem]);
  }

  /** Writes down a recipe whose lines are there; its cost is still to be written. */
  add(recipe: Recipe): number {
    const number = this.next;
    const [firstUse, firstBent] = [this.usesFrom[number]!, this.bentFrom[number]!];
    let even = this.bent.length === firstBent;
    let unknown = false;
    for (let i = firstUse; i < this.uses.length; i += 1) {
      const { of, batches, grows } = this.uses[i]!;
      even &&= this.even[of]! && !grows;
      unknown ||= !batches || this.unknown[of]!;
    }
    this.recipes.push(recipe);
    this.makes.push(makes(recipe, this.facts));
    this.straight.push(this.sums.sum(this.reasons.has(number) ? open : 0));
    this.even.push(even);
    this.unknown.push(unknown);
    this.usesFrom.push(this.uses.length);
    this.bentFrom.push(this.bent.length);
    this.by.push(-1);
    this.taken.push(undefined);
    this.write(itemsOf(recipe).own, number);
    return number;
  }

  private write(item: number, number: number): void {
    if (item >= this.written.length) {
      const more = new Int32Array(Math.max(numbersGiven().recipes, item * 2));
      more.set(this.written);
      this.written = more;
    }
    this.written[item] = number + 1;
  }
}
