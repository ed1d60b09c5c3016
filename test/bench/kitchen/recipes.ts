import type { z } from 'zod';
import type { recipe } from '../../../src/core/facts/recipe.js';
import { type Chance, chanceFor } from './chance.js';
import { ingredientKey, wayOf } from './ingredients.js';

export type RecipeIn = z.input<typeof recipe>;
type LineIn = NonNullable<RecipeIn['lines']>[number];

export const recipeKey = (i: number): string => `recipe-${i}`;

/** Of ten recipes three are made of ingredients alone, three have components of those, four have components of these. */
export const depths = (count: number) => ({
  second: Math.floor(count * 0.3),
  third: Math.floor(count * 0.6),
});

/** The recipe whose page is measured: components of components, on the menu of some events to come. */
export const measured = recipeKey(1401);

const names = [
  'Barley risotto',
  'Bean stew',
  'Carrot cake',
  'Fish pie',
  'Flatbread',
  'Leek tart',
  'Lemon sauce',
  'Rolls',
];

/** One recipe of some ten lines, its components among those that come before it, with a method of four to six steps. */
export const recipeAt = (i: number, count: number, ingredients: number): RecipeIn => {
  const chance = chanceFor(`recipe ${i}`);
  const components = componentsOf(i, count, chance);
  const lines = [
    ...ingredientLines(chance.between(8, 11) - components.length, ingredients, chance),
    ...components.map(
      (key, n): LineIn => ({
        key: `component-${n}`,
        amount: String(chance.between(2, 12) * 50),
        unit: 'g',
        item: { component: key },
      }),
    ),
  ];
  return {
    key: recipeKey(i),
    name: `${chance.pick(names)} ${i}`,
    yield: {
      portions: String(chance.pick([8, 10, 12, 16, 20])),
      weight: { amount: String(chance.between(24, 40) * 50), unit: 'g' },
    },
    cookingLoss: chance.percent(30) ? String(chance.between(3, 25)) : null,
    byPiece: chance.percent(15),
    lines,
    steps: stepsOf(i < depths(count).third ? chance.between(0, 2) : 0, chance),
    keepingDays: chance.between(1, 5),
  };
};

const componentsOf = (i: number, count: number, chance: Chance): string[] => {
  const { second, third } = depths(count);
  if (i < second) return [];
  const [from, to] = i < third ? [0, second] : [second, third];
  const first = chance.between(from, to - 1);
  if (!chance.percent(40)) return [recipeKey(first)];
  const other = chance.below(to);
  return other === first ? [recipeKey(first)] : [recipeKey(first), recipeKey(other)];
};

/** Some ingredients stand in many recipes and most in few. */
const ingredientLines = (count: number, ingredients: number, chance: Chance): LineIn[] => {
  const chosen = new Set<number>();
  while (chosen.size < count) {
    const near = chance.below(ingredients);
    chosen.add(Math.floor((near * (1 + chance.below(ingredients))) / ingredients));
  }
  return [...chosen].map((i, n) => ({
    key: `line-${n}`,
    ...amountOf(i, chance),
    item: { ingredient: ingredientKey(i) },
    preparation: chance.percent(40)
      ? chance.pick(['peeled, 3 cm dice', 'finely sliced', 'melted', 'sifted'])
      : '',
  }));
};

const amountOf = (i: number, chance: Chance): Pick<LineIn, 'amount' | 'unit' | 'scales'> => {
  switch (wayOf(i)) {
    case 'weighed':
      return { amount: String(chance.between(2, 60) * 10), unit: 'g' };
    case 'poured':
      return { amount: String(chance.between(1, 12) * 25), unit: 'ml' };
    case 'spooned':
      if (chance.percent(10)) return { amount: null, unit: 'g', scales: 'taste' };
      return { amount: chance.pick(['1/2', '3/4', '1', '2', '1.5']), unit: chance.pick(['tsp', 'tbsp']) };
    case 'counted':
      return {
        amount: String(chance.between(1, 6)),
        unit: 'each',
        scales: chance.percent(50) ? 'pieces' : 'straight',
      };
  }
};

const doings = [
  'Weigh everything out, wash and trim the vegetables, and line the trays',
  'Sweat the vegetables gently in the fat with a little of the salt until soft but not brown',
  'Add the liquid, bring to the boil and simmer until it coats the back of a spoon',
  'Mix, rest under a cloth, knock back and shape',
  'Bake until set and golden, turning the trays once',
  'Cool, cover and label with the day it was made',
];

const stepsOf = (daysAhead: number, chance: Chance): NonNullable<RecipeIn['steps']> =>
  Array.from({ length: chance.between(4, 6) }, (_, n) => {
    const baked = n === 3 && chance.percent(50);
    return {
      key: `step-${n}`,
      words: `${doings[n]}.`,
      minutes: chance.percent(96) ? chance.between(1, 9) * 5 : null,
      attended: !baked,
      oven: baked ? { heat: chance.between(14, 22) * 10, tolerance: 10 } : null,
      portionsPerShelf: baked ? String(chance.between(8, 24)) : null,
      rings: n === 1 || n === 2 ? 1 : 0,
      daysAhead,
    };
  });
