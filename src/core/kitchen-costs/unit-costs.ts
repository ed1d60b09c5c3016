import { rateOf } from '../costing.js';
import type { Facts } from '../facts/facts.js';
import type { Cup } from '../facts/kitchen.js';
import type { Line, Recipe } from '../facts/recipe.js';
import { lineGap } from '../line-problems.js';
import { weighLine } from '../line-weight.js';
import { ingredientOf } from '../lookup.js';
import type { Problem } from '../problem.js';
import { Rational } from '../quantity/rational.js';
import { quantity } from '../quantity/units.js';
import { isMissing } from '../weighing.js';
import type { Given } from './figures.js';
import { guess, open, type SumsWritten } from './sums.js';

/**
 * One of a unit of an ingredient as lines ask for it: a tablespoon, prepared, as bought or once roasted. What a line
 * weighs and costs is straight in its amount, so lines that ask alike share its cost; the first of them stands here.
 */
export type UnitAsked = {
  at: number;
  ingredient: string;
  unit: string;
  cup: Cup;
  stated: Line['stated'];
  cooked: string;
  line: Line;
  recipe: Recipe;
};

/** What one of a unit costs in minor units, exact, with what leaves that open or makes it a guess. */
export const unitCost = (asked: UnitAsked, facts: Facts): Given & { problems: readonly Problem[] } => {
  const { unit, cup, line, recipe } = asked;
  const ingredient = ingredientOf(asked.ingredient, facts);
  const { bought } = weighLine(line, ingredient, quantity(Rational.one, unit, cup));
  const known = isMissing(bought) ? undefined : bought;
  const { rate, problems } = rateOf(ingredient, known?.base, facts);
  if (ingredient.notBought) return { value: Rational.zero, marks: 0, problems };
  const value = known && rate?.times(known.value);
  const guessed = problems.some(({ code }) => code === 'guessed-price') ? guess : 0;
  const gap = isMissing(bought) ? [lineGap(recipe, line, ingredient, bought)] : [];
  return { value, marks: (value ? 0 : open) | guessed, problems: [...gap, ...problems] };
};

/** The unit costs that lines ask for, each once, in the order of their places and by ingredient. */
export class UnitCosts {
  readonly asked: UnitAsked[] = [];
  readonly ofIngredient = new Map<string, UnitAsked[]>();

  constructor(private readonly sums: SumsWritten) {}

  /** The cost of one of a unit, by its name among the sums. */
  of(ingredient: string, unit: string, cup: Cup, line: Line, recipe: Recipe): number {
    const { stated, cooked } = line;
    let others = this.ofIngredient.get(ingredient);
    if (!others) {
      others = [];
      this.ofIngredient.set(ingredient, others);
    }
    for (const one of others)
      if (one.unit === unit && one.cup === cup && one.stated === stated && one.cooked === cooked)
        return this.sums.given(one.at);
    const at = this.asked.length;
    const first = { at, ingredient, unit, cup, stated, cooked, line, recipe };
    others.push(first);
    this.asked.push(first);
    return this.sums.given(at);
  }
}
