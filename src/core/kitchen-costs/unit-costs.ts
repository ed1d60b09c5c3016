import { rateOf } from '../costing.js';
import type { Facts } from '../facts/facts.js';
import type { Ingredient } from '../facts/ingredient.js';
import type { Cup } from '../facts/kitchen.js';
import { ingredientOf } from '../lookup.js';
import type { Problem } from '../problem.js';
import { missingFact } from '../problems.js';
import { Rational } from '../quantity/rational.js';
import { type Base, type Quantity, quantity } from '../quantity/units.js';
import { isMissing, weigh } from '../weighing.js';
import type { Given } from './figures.js';
import { guess, open, type SumsWritten } from './sums.js';

/**
 * One of a unit of an ingredient: as lines ask for it (a tablespoon, prepared or as bought), or of the base that it is
 * bought in once a line has been weighed. Lines that ask alike share its cost.
 */
export type UnitAsked = { at: number; ingredient: string } & (
  | { unit: string; cup: Cup; bought: boolean }
  | { base: Base | undefined }
);

/** What one of a unit costs in minor units, exact, with what leaves that open or makes it a guess. */
export const unitCost = (asked: UnitAsked, facts: Facts): Given & { problems: readonly Problem[] } => {
  const ingredient = ingredientOf(asked.ingredient, facts);
  const one = 'unit' in asked ? boughtOne(asked, ingredient) : asOne(asked.base);
  const toBuy = one && !isMissing(one) ? one : undefined;
  const { rate, problems } = rateOf(ingredient, toBuy?.base, facts);
  const gap = one && isMissing(one) && !ingredient.notBought ? [missingFact(ingredient, one)] : [];
  const value = ingredient.notBought ? Rational.zero : toBuy && rate?.times(toBuy.value);
  const guessed = problems.some(({ code }) => code === 'guessed-price') ? guess : 0;
  return { value, marks: (value ? 0 : open) | guessed, problems: [...gap, ...problems] };
};

const asOne = (base: Base | undefined): Quantity | undefined => base && { value: Rational.one, base };

const boughtOne = ({ unit, cup, bought }: Extract<UnitAsked, { unit: string }>, ingredient: Ingredient) =>
  weigh(ingredient, quantity(Rational.one, unit, cup), bought).bought;

/** The unit costs that lines ask for, each once, in the order of their places and by ingredient. */
export class UnitCosts {
  readonly asked: UnitAsked[] = [];
  readonly of = new Map<string, UnitAsked[]>();

  constructor(private readonly sums: SumsWritten) {}

  /** The cost of one of a unit, by its name among the sums. */
  asLine(ingredient: string, unit: string, cup: Cup, bought: boolean): number {
    const asked = this.askedOf(ingredient);
    for (const one of asked)
      if ('unit' in one && one.unit === unit && one.bought === bought && one.cup === cup)
        return this.sums.given(one.at);
    return this.add({ at: this.asked.length, ingredient, unit, cup, bought }, asked);
  }

  /** The cost of one gram, millilitre or piece as bought; open where no line could say which. */
  asBought(ingredient: string, base: Base | undefined): number {
    const asked = this.askedOf(ingredient);
    for (const one of asked) if ('base' in one && one.base === base) return this.sums.given(one.at);
    return this.add({ at: this.asked.length, ingredient, base }, asked);
  }

  private askedOf(ingredient: string): UnitAsked[] {
    let asked = this.of.get(ingredient);
    if (!asked) {
      asked = [];
      this.of.set(ingredient, asked);
    }
    return asked;
  }

  private add(one: UnitAsked, others: UnitAsked[]): number {
    others.push(one);
    this.asked.push(one);
    return this.sums.given(one.at);
  }
}
