import { byKey, type Facts } from '../../../src/core/facts/facts.js';
import { type Ingredient, ingredient } from '../../../src/core/facts/ingredient.js';
import { kitchen } from '../../../src/core/facts/kitchen.js';
import { type Recipe, recipe } from '../../../src/core/facts/recipe.js';
import { type Chance, chanceFor } from './chance.js';
import { today } from './days.js';
import { ingredientAt, ingredientKey, type Way, wayOf } from './ingredients.js';
import { type RecipeIn, recipeKey } from './recipes.js';

type LineIn = Omit<NonNullable<RecipeIn['lines']>[number], 'key'>;

export const linesEach = 15;

/** Of a hundred recipes so many are made of ingredients alone, have components of those, of these, and so on: four deep. */
const floors = [30, 55, 75, 90, 100];

/** A kitchen of so many recipes, fifteen lines each, components four deep, with three ingredients for ten recipes. */
export const deepKitchen = (recipes: number, which = 0): Facts => {
  const ingredients = Math.ceil(recipes * 0.3);
  const list = <T>(count: number, one: (i: number) => T): T[] =>
    Array.from({ length: count }, (_, i) => one(i));
  return {
    kitchen: kitchen.parse({ name: 'The deep kitchen', currency: 'GBP', timeZone: 'Europe/London' }),
    places: new Map(),
    ingredients: byKey(list(ingredients, ingredientIn)),
    recipes: byKey(list(recipes, (i) => recipeIn(i, recipes, ingredients, which))),
  };
};

/** Of fifty ingredients one keeps its gaps: with more, hardly a recipe of some depth would be complete. */
const ingredientIn = (i: number): Ingredient => {
  const { packs = [], edibleYield, ...more } = ingredientAt(i);
  const cookedYields = [{ name: 'roasted', yield: '0.72', from: 'prepared' as const }];
  if (i % 50 === 0) return ingredient.parse({ ...more, packs, edibleYield, cookedYields });
  const unit = wayOf(i) === 'counted' ? 'each' : wayOf(i) === 'poured' ? 'l' : 'kg';
  const price = { key: 'price-0', date: today, price: 137 + (i % 800) };
  const pack = { key: 'pack-0', size: { amount: '3', unit }, prices: [price] };
  return ingredient.parse({
    ...more,
    packs: packs.length > 0 ? packs : [pack],
    edibleYield: edibleYield ?? { yield: '0.9' },
    cookedYields,
  });
};

const recipeIn = (i: number, count: number, ingredients: number, which: number): Recipe => {
  const chance = chanceFor(`deep ${which} ${i}`);
  const components = componentsOf(i, count, chance);
  const weight = { amount: String(chance.between(24, 90) * 50), unit: 'g' };
  return recipe.parse({
    key: recipeKey(i),
    name: `Dish ${i}`,
    yield: chance.percent(90)
      ? { portions: String(chance.pick([6, 8, 10, 12, 16, 20])), weight: chance.percent(95) ? weight : null }
      : { weight },
    cookingLoss: chance.percent(20) ? String(chance.between(3, 25)) : null,
    cup: chance.percent(10) ? 'us' : null,
    lines: Array.from({ length: linesEach }, (_, n) => ({
      key: `line-${n}`,
      ...(n < components.length
        ? componentLine(components[n]!, chance)
        : ingredientLine(ingredients, chance)),
    })),
  });
};

/** One of the floor below, and now and then one or two more of any floor below. */
const componentsOf = (i: number, count: number, chance: Chance): number[] => {
  const starts = [0, ...floors.map((percent) => Math.floor((count * percent) / 100))];
  const floor = starts.findLastIndex((start) => start <= i);
  if (floor === 0) return [];
  const first = chance.between(starts[floor - 1]!, starts[floor]! - 1);
  const more = Array.from({ length: chance.below(3) }, () => chance.below(starts[floor]!));
  return [...new Set([first, ...more])];
};

const componentLine = (of: number, chance: Chance): LineIn => {
  const item = { component: recipeKey(of) };
  if (chance.percent(70)) return { amount: String(chance.between(2, 24) * 25), unit: 'g', item };
  if (chance.percent(50)) return { amount: String(chance.between(1, 6)), unit: 'portion', item };
  return { amount: chance.pick(['1/2', '1', '1.5']), unit: 'batch', item };
};

/** Some ingredients stand in many recipes and most in few. */
const ingredientLine = (ingredients: number, chance: Chance): LineIn => {
  const near = chance.below(ingredients);
  const i = Math.floor((near * (1 + chance.below(ingredients))) / ingredients);
  return { ...measured(wayOf(i), chance), item: { ingredient: ingredientKey(i) } };
};

const measured = (
  way: Way,
  chance: Chance,
): Pick<LineIn, 'amount' | 'amountTo' | 'unit' | 'scales' | 'stated' | 'cooked'> => {
  if (way === 'weighed') return weighed(chance);
  if (way === 'poured')
    return { amount: String(chance.between(1, 12)), unit: chance.pick(['dl', 'cup', 'fl-oz', 'tbsp']) };
  if (way === 'counted')
    return {
      amount: String(chance.between(1, 6)),
      unit: 'each',
      scales: chance.percent(25) ? 'pieces' : 'straight',
    };
  if (chance.percent(10)) return { amount: null, unit: 'g', scales: 'taste' };
  const scales = chance.percent(10) ? chance.pick(['herb', 'chilli', 'batch'] as const) : 'straight';
  return { amount: chance.pick(['1/2', '3/4', '1', '2', '1.5']), unit: chance.pick(['tsp', 'tbsp']), scales };
};

const weighed = (chance: Chance): ReturnType<typeof measured> => {
  const amount = String(chance.between(2, 60) * 10);
  if (chance.percent(5)) return { amount, amountTo: `${amount}.5`, unit: 'g' };
  if (chance.percent(3)) return { amount, unit: 'g', stated: 'cooked', cooked: 'roasted' };
  if (chance.percent(80)) return { amount, unit: 'g', stated: chance.percent(10) ? 'bought' : 'usual' };
  return { amount: chance.pick(['1/4', '0.5', '1', '1.2']), unit: chance.pick(['kg', 'lb', 'oz']) };
};
