import { rateOf } from '../costing.js';
import type { Facts } from '../facts/facts.js';
import type { Cup } from '../facts/kitchen.js';
import type { Line, Recipe } from '../facts/recipe.js';
import { lineGap } from '../line-problems.js';
import { type Gap, weighLine } from '../line-weight.js';
import { ingredientOf } from '../lookup.js';
import type { Problem } from '../problem.js';
import { Rational } from '../quantity/rational.js';
import { needsCup, quantity } from '../quantity/units.js';
import { isMissing } from '../weighing.js';
import type { Given } from './figures.js';
import { ingredientNumber, numbersGiven } from './items.js';
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
  line: Line;
  recipe: Recipe;
};

/** A way to ask; by the number of an ingredient among all keys, one above the place of its cost, or 0 where nobody asked so. */
type Way = { cup: Cup; stated: Line['stated']; cooked: string; above: Int32Array };

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
  const marks = (value ? 0 : open) | guessed;
  if (known) return { value, marks, problems };
  return { value, marks, problems: [lineGap(recipe, line, ingredient, bought as Gap), ...problems] };
};

const none: readonly Way[] = [];

/** The unit costs that lines ask for, each once, in the order of their places. */
export class UnitCosts {
  readonly asked: UnitAsked[] = [];
  /** The ingredients by their numbers, in the order of the kitchen. */
  private readonly numbers: Int32Array;
  private readonly ways = new Map<string, readonly Way[]>();

  constructor(
    ingredients: Iterable<string>,
    private readonly sums: SumsWritten,
  ) {
    this.numbers = Int32Array.from(ingredients, ingredientNumber);
  }

  /** The cost of one of a unit, by its name among the sums. */
  of(number: number, unit: string, cup: Cup, line: Line, recipe: Recipe): number {
    const { above } = this.way(unit, cup, line);
    return this.sums.given((above[number] || this.ask(number, unit, cup, line, recipe, above)) - 1);
  }

  private ask(number: number, unit: string, cup: Cup, line: Line, recipe: Recipe, above: Int32Array): number {
    const ingredient = 'ingredient' in line.item ? line.item.ingredient : '';
    if (number >= above.length) throw new Error(`the facts have no ingredient ${ingredient}`);
    above[number] = this.asked.push({ at: this.asked.length, ingredient, unit, cup, line, recipe });
    return above[number]!;
  }

  /** What they cost, by place; worked out by ingredient, so that each is looked at but once. */
  costs(facts: Facts): Given[] {
    const given = new Array<Given>(this.asked.length);
    const ways = [...new Set([...this.ways.values()].flat().map(({ above }) => above))];
    for (const number of this.numbers)
      for (const above of ways) {
        const at = above[number]! - 1;
        if (at >= 0) given[at] = unitCost(this.asked[at]!, facts);
      }
    return given;
  }

  /** All that is asked of one ingredient. */
  ofIngredient(key: string): UnitAsked[] {
    const number = ingredientNumber(key);
    const found = [...this.ways.values()].flat().map(({ above }) => above[number] ?? 0);
    return [...new Set(found)].flatMap((above) => this.asked[above - 1] ?? []);
  }

  private way(unit: string, cup: Cup, { stated, cooked }: Line): Way {
    const ways = this.ways.get(unit) ?? none;
    // By number, as this is asked for every line there is.
    for (let i = 0; i < ways.length; i += 1) {
      const way = ways[i]!;
      if (way.cup === cup && way.stated === stated && way.cooked === cooked) return way;
    }
    return this.another(unit, { cup, stated, cooked });
  }

  private another(unit: string, asked: Omit<Way, 'above'>): Way {
    const ways = this.ways.get(unit) ?? none;
    // A gram is a gram by any cup.
    const alike = needsCup(unit)
      ? undefined
      : ways.find(({ stated, cooked }) => stated === asked.stated && cooked === asked.cooked);
    const way: Way = { ...asked, above: alike?.above ?? new Int32Array(numbersGiven().ingredients) };
    this.ways.set(unit, [...ways, way]);
    return way;
  }
}
