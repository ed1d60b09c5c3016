import published from '../../shared/foods.json' with { type: 'json' };
import type { Ingredient } from './facts/ingredient.js';
import { nearNames, sameName } from './near-names.js';
import { exact } from './quantity/amount.js';

/** Reference figures of a food, of the USDA's tables: edible yield, density, weight of a piece. */
export type Food = {
  id: string;
  name: string;
  item: string;
  usda: string;
  yield?: string;
  refuse?: string;
  gramsPerMl?: string;
  measured?: { amount: string; unit: string; grams: string; row: number; text: string };
  weights: { unit: string; grams: string; item: string; row: number; text: string }[];
};

export const foods: readonly Food[] = published as Food[];
const byName = new Map(foods.map((food) => [food.name, food]));
const byId = new Map(foods.map((food) => [food.id, food]));

/** Foods of the reference whose name is like an ingredient's, the likeliest first, three at most. */
export const foodsLike = (name: string): Food[] => {
  const names = [...byName.keys()];
  const found = [name, name.split(',')[0]!].flatMap((part) => nearNames(part, names));
  return [...new Set(found)].slice(0, 3).map((one) => byName.get(one)!);
};

/**
 * The reference food of an ingredient's own name, where it says that less is eaten and the ingredient is entered as
 * eaten whole; undefined when there is nothing to look at.
 */
export const wholeDespite = ({ name, edibleYield }: Ingredient): Food | undefined => {
  if (!edibleYield || !exact(edibleYield.yield).equals(exact('1'))) return undefined;
  return foods.find((food) => food.yield && food.yield !== '1' && sameName(food.name, name));
};

export const foodOf = (id: string): Food | undefined => byId.get(id);

/** The figures of a food as an ingredient keeps them, each with its item number as its source. */
export const figuresOf = (food: Food): Pick<Ingredient, 'edibleYield' | 'density' | 'weights'> => {
  const { item, refuse, gramsPerMl, measured, weights } = food;
  return {
    edibleYield: food.yield
      ? {
          yield: food.yield,
          source: refuse
            ? `USDA SR28 ${item}, less ${refuse.charAt(0).toLowerCase()}${refuse.slice(1)}`
            : `USDA SR28 ${item}`,
        }
      : null,
    density: gramsPerMl
      ? { gramsPerMl, source: `USDA SR28 ${item}, ${measured?.text} ${measured?.grams} g` }
      : null,
    weights: weights.map(({ unit, grams, item, text }) => ({
      unit,
      grams,
      of: 'prepared' as const,
      source: `USDA SR28 ${item}, ${text}`,
    })),
  };
};
