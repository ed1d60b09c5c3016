import { costOfEvent, type EventCost, packPrice } from '../costing.js';
import type { Event } from '../facts/event.js';
import { type Facts, factsOf } from '../facts/facts.js';
import type { Ingredient } from '../facts/ingredient.js';
import { isFlag } from '../line-problems.js';
import { allocate } from '../money.js';
import type { Answer } from '../problem.js';
import { Rational } from '../quantity/rational.js';
import type { Base, Quantity } from '../quantity/units.js';
import { worstFirst } from '../requirements.js';
import { boughtIn, isMissing, latestPrice, preferredPack } from '../weighing.js';
import { aboutCost } from './about-cost.js';
import { costShares } from './cost-shares.js';
import { dishFoot } from './line-foot.js';
import { conventions, decimalMoney, type Sheet } from './sheet.js';

/** One ingredient over the whole event; undefined figures wait for a fact. */
export type IngredientUse = {
  ingredient: Ingredient;
  prepared: Rational | undefined;
  bought: Quantity | undefined;
  /** What its uses cost as far as is known, and its part of the event's total in minor units; undefined when none is. */
  exact: Rational | undefined;
  cost: number | undefined;
  /** false when the cost of a use of it isn't known. */
  complete: boolean;
};

export type Costing = { event: Event; facts: Facts; cost: EventCost; ingredients: IngredientUse[] };

/** Food cost of an event as used: by course and dish, and by ingredient; both add up to the same total. */
export const costing = (event: Event, today: Facts): Answer<Costing> => {
  const facts = factsOf(event, today);
  const { value: cost, problems } = costOfEvent(event, facts);
  const ingredients = ingredientUses(cost, facts);
  return {
    value: { event, facts, cost, ingredients },
    problems: worstFirst(problems.filter((problem) => !isFlag(problem))),
  };
};

const plus = (a: Rational | undefined, b: Rational | undefined) => a && b && a.plus(b);

/**
 * Every ingredient of an event's dishes with all its uses together, in the base its pack is sold in; exact. Their
 * costs in minor units add up to the event's total.
 */
export const ingredientUses = (cost: Pick<EventCost, 'courses' | 'total'>, facts: Facts): IngredientUse[] => {
  const uses = new Map<string, IngredientUse>();
  for (const { need, cost: exact } of linesOf(cost)) {
    const ingredient = need.ingredient!;
    const bought = need.bought && asSold(ingredient, need.bought, facts);
    const complete = exact !== undefined;
    const before = uses.get(ingredient.key);
    if (!before) {
      const { prepared } = need;
      uses.set(ingredient.key, { ingredient, prepared, bought, exact, cost: undefined, complete });
      continue;
    }
    before.prepared = plus(before.prepared, need.prepared);
    before.bought = added(before.bought, bought);
    before.exact = plus(before.exact, exact) ?? before.exact ?? exact;
    before.complete &&= complete;
  }
  const list = [...uses.values()];
  const parts = allocate(
    cost.total,
    list.map((use) => use.exact ?? Rational.zero),
  );
  for (const [i, use] of list.entries()) if (use.exact) use.cost = parts[i];
  return list.sort((a, b) => (b.cost ?? Number.MAX_SAFE_INTEGER) - (a.cost ?? Number.MAX_SAFE_INTEGER));
};

/** Ingredient lines with an amount, of every recipe of every dish. */
const linesOf = (cost: Pick<EventCost, 'courses'>) =>
  cost.courses
    .flatMap(({ dishes }) => dishes.flatMap(({ recipes }) => recipes.flatMap(({ lines }) => lines)))
    .filter(({ need }) => need.ingredient && need.line.amount !== null);

const asSold = (ingredient: Ingredient, bought: Quantity, facts: Facts): Quantity => {
  const pack = packPrice(ingredient, facts);
  const base: Base = 'size' in pack ? pack.size.base : bought.base;
  const value = boughtIn(ingredient, bought, base);
  return isMissing(value) ? bought : { value, base };
};

const added = (a: Quantity | undefined, b: Quantity | undefined): Quantity | undefined =>
  a && b && a.base === b.base ? { base: a.base, value: a.value.plus(b.value) } : undefined;

/** The costing as tables. */
export const costingSheet = ({ value, problems }: Answer<Costing>): Sheet => {
  const { event, facts, cost, ingredients } = value;
  const { currency } = facts.kitchen;
  const shares = costShares(cost).flatMap(({ course, dishes }) =>
    dishes.map((share) => ({ course: course.name, ...share })),
  );
  return {
    sheet: 'costing',
    title: `Food cost, ${event.name}`,
    about: aboutCost(event, cost, currency),
    get tables() {
      return [
        {
          name: 'dishes',
          title: 'By dish',
          columns: [
            { key: 'course', label: 'Course' },
            { key: 'dish', label: 'Dish' },
            { key: 'portions', label: 'Portions' },
            { key: 'cost', label: 'Cost known', unit: currency },
            { key: 'aPortion', label: 'A portion', unit: currency },
            { key: 'share', label: 'Of the total', unit: '%' },
            { key: 'complete', label: 'Complete' },
          ],
          rows: shares.map(({ course, dish, aPortion, share }) => ({
            course,
            dish: dish.need.recipe.name,
            portions: dish.need.portions.toString(),
            cost: decimalMoney(dish.cost, currency),
            aPortion: dish.complete && aPortion !== undefined ? decimalMoney(aPortion, currency) : '',
            share: share.toFixed(1),
            complete: dish.complete ? 'yes' : 'no',
          })),
        },
        {
          name: 'ingredients',
          title: 'By ingredient',
          columns: [
            { key: 'ingredient', label: 'Ingredient' },
            { key: 'prepared', label: 'Prepared', unit: 'g' },
            { key: 'bought', label: 'As purchased' },
            { key: 'unit', label: 'Unit' },
            { key: 'pack', label: 'Pack' },
            { key: 'packUnit', label: 'Unit of the pack' },
            { key: 'price', label: 'Price of a pack', unit: currency },
            { key: 'priceDate', label: 'Price of' },
            { key: 'guess', label: 'A guess' },
            { key: 'cost', label: 'Cost known', unit: currency },
            { key: 'complete', label: 'Complete' },
          ],
          rows: ingredients.map(({ ingredient, prepared, bought, cost: part, complete }) => ({
            ingredient: ingredient.name,
            prepared: prepared?.toString() ?? '',
            bought: bought?.value.toString() ?? '',
            unit: bought?.base ?? '',
            ...priceRow(ingredient, currency),
            cost: part === undefined ? '' : decimalMoney(part, currency),
            complete: complete ? 'yes' : 'no',
          })),
        },
      ];
    },
    problems,
    foot: [
      conventions.portions,
      conventions.weights,
      conventions.pieces,
      conventions.components,
      ...dishFoot(shares.map(({ dish }) => dish.need)),
      conventions.prices,
    ],
  };
};

const priceRow = (ingredient: Ingredient, currency: string): Record<string, string> => {
  const pack = preferredPack(ingredient);
  const price = pack && latestPrice(pack);
  return {
    pack: pack?.size.amount ?? '',
    packUnit: pack?.size.unit ?? '',
    price: price ? decimalMoney(price.price, currency) : '',
    priceDate: price?.date ?? '',
    guess: price?.guess ? 'yes' : '',
  };
};
