import type { Measure } from './facts/common.js';
import type { CostLine } from './facts/cost-line.js';
import type { Dish, Event, Group } from './facts/event.js';
import { type Facts, factsOf } from './facts/facts.js';
import type { Ingredient } from './facts/ingredient.js';
import type { Recipe } from './facts/recipe.js';
import { type MoneyBeside, moneyBeside } from './money-beside.js';
import { exact } from './quantity/amount.js';
import { Rational } from './quantity/rational.js';
import type { Quantity } from './quantity/units.js';
import { portionsOf } from './requirements.js';
import type { IngredientUse } from './sheets/costing.js';
import type { WholeCost } from './whole-cost/whole-cost.js';

export type LineBeside = {
  line: CostLine;
  cost: MoneyBeside;
  /** Of all together; undefined where it goes by no hours, or none were noted. */
  hours: { planned: Rational | undefined; real: Rational | undefined };
};
export type IngredientBeside = {
  key: string;
  name: string;
  planned: Quantity | undefined;
  bought: Measure | null;
  cost: MoneyBeside;
};
export type DishEaten = {
  dish: Dish;
  recipe: Recipe;
  made: Rational;
  left: Rational | undefined;
  eaten: Rational | undefined;
  /** Portions eaten for each guest who came. */
  aGuest: Rational | undefined;
};

export type PlannedBesideReal = {
  groups: { group: Group; came: number | undefined }[];
  planned: number;
  came: number | undefined;
  food: MoneyBeside;
  lines: LineBeside[];
  total: MoneyBeside;
  ingredients: IngredientBeside[];
  dishes: DishEaten[];
};

/**
 * What a party really came to beside what was planned, by line. What was not noted is not known, never as planned;
 * the food is known once what was paid is noted for everything its recipes need. `names` are of what else was bought.
 */
export const besideReal = (
  event: Event,
  today: Facts,
  cost: WholeCost,
  uses: readonly IngredientUse[],
  names: ReadonlyMap<string, string>,
): PlannedBesideReal => {
  const ingredients = ingredientsBeside(event, cost, uses, names);
  const paid = ingredients.reduce((total, { cost: { real } }) => total + real, 0);
  const allPaid = ingredients.length > 0 && ingredients.every(({ cost: { realKnown } }) => realKnown);
  const food = moneyBeside(cost.food.cost, cost.food.complete, paid, allPaid);
  const lines = cost.parts.map((part) => lineBeside(event, part));
  const parts = [food, ...lines.map((line) => line.cost)];
  return {
    groups: event.groups.map((group) => ({ group, came: cameOf(event, group) })),
    planned: cost.guests,
    came: guestsWhoCame(event),
    food,
    lines,
    total: moneyBeside(
      cost.total,
      cost.complete,
      parts.reduce((total, { real }) => total + real, 0),
      parts.every(({ realKnown }) => realKnown),
    ),
    ingredients,
    dishes: dishesEaten(event, today),
  };
};

const cameOf = ({ afterwards }: Event, group: Group): number | undefined =>
  afterwards?.came.find((one) => one.group === group.key)?.guests;

/** Guests who came, of all groups; undefined while one of them was not counted. */
export const guestsWhoCame = (event: Event): number | undefined => {
  const counted = event.groups.map((group) => cameOf(event, group));
  return counted.reduce<number | undefined>(
    (all, one) => (all === undefined || one === undefined ? undefined : all + one),
    0,
  );
};

const lineBeside = ({ afterwards }: Event, part: WholeCost['parts'][number]): LineBeside => {
  const noted = afterwards?.spent.find(({ line }) => line === part.line.key);
  const paid = noted?.paid ?? null;
  return {
    line: part.line,
    cost: moneyBeside(part.cost, part.complete, paid ?? 0, paid !== null),
    hours: { planned: part.hours, real: noted?.hours ? exact(noted.hours) : undefined },
  };
};

const ingredientsBeside = (
  { afterwards }: Event,
  { view, food }: WholeCost,
  uses: readonly IngredientUse[],
  names: ReadonlyMap<string, string>,
): IngredientBeside[] => {
  const packs = new Map(food.packs.map((pack) => [pack.ingredient.key, pack]));
  const bought = new Map((afterwards?.bought ?? []).map((one) => [one.ingredient, one]));
  const planned = uses.filter(({ ingredient }) => !ingredient.notBought || bought.has(ingredient.key));
  const rows = planned.map(({ ingredient, bought: amount, cost, complete }) => {
    const pack = packs.get(ingredient.key);
    const [costs, known] =
      view === 'used' ? [cost ?? 0, complete] : [pack?.cost ?? 0, pack?.complete ?? ingredient.notBought];
    return rowOf(ingredient, amount, costs, known, bought.get(ingredient.key));
  });
  const there = new Set(planned.map(({ ingredient }) => ingredient.key));
  for (const [key, one] of bought)
    if (!there.has(key)) rows.push(rowOf({ key, name: names.get(key) ?? key }, undefined, 0, true, one));
  return rows;
};

const rowOf = (
  { key, name }: Pick<Ingredient, 'key' | 'name'>,
  planned: Quantity | undefined,
  cost: number,
  complete: boolean,
  noted: { amount: Measure | null; paid: number | null } | undefined,
): IngredientBeside => {
  const paid = noted?.paid ?? null;
  return {
    key,
    name,
    planned,
    bought: noted?.amount ?? null,
    cost: moneyBeside(cost, complete, paid ?? 0, paid !== null),
  };
};

/** What was eaten of each dish: portions made less those left, in all and for each guest who came; exact. */
export const dishesEaten = (event: Event, today: Facts): DishEaten[] => {
  const { recipes } = factsOf(event, today);
  const guests = guestsWhoCame(event);
  return event.courses.flatMap(({ dishes }) =>
    dishes.flatMap((dish) => {
      const recipe = recipes.get(dish.recipe);
      if (!recipe) return [];
      const made = portionsOf(dish, recipe, event);
      const noted = event.afterwards?.left.find((one) => one.dish === dish.key);
      const left = noted && exact(noted.portions);
      const eaten = left && atLeastNone(made.minus(left));
      const aGuest = eaten && guests ? eaten.over(Rational.of(guests)) : undefined;
      return [{ dish, recipe, made, left, eaten, aGuest }];
    }),
  );
};

/** More can't be left than was made; where that was noted, none was eaten. */
const atLeastNone = (value: Rational): Rational => (value.sign < 0 ? Rational.zero : value);
