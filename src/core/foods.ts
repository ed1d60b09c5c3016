import published from '../../shared/foods.json' with { type: 'json' };
import type { Ingredient } from './facts/ingredient.js';
import { folded, sameName } from './near-names.js';
import { exact } from './quantity/amount.js';
import { likeness, trigrams } from './trigrams.js';

/** A row of the table WEIGHT. */
type Row = { item: string; row: number; text: string; grams: string };

/** Reference figures of a food, of the USDA's tables: edible yield, density, weight of a piece, cooked yields. */
export type Food = {
  id: string;
  name: string;
  /** What cooks elsewhere, or in other words, call it. */
  also?: string[];
  item: string;
  usda: string;
  yield?: string;
  refuse?: string;
  /** Other published figures of the edible yield, each with its source in words. */
  others?: { yield: string; source: string }[];
  /** Why the edible yield is worth a look. */
  doubt?: string;
  gramsPerMl?: string;
  measured?: { amount: string; unit: string; grams: string; row: number; text: string };
  weights: (Row & { unit: string })[];
  /** `of`: the grams it starts from, bought with bone and trim or prepared; `raw`: the row that says so, if another does. */
  cooked?: (Row & { name: string; yield: string; from: 'bought' | 'prepared'; of: string; raw?: Row })[];
};

export const foods: readonly Food[] = published as Food[];
const byId = new Map(foods.map((food) => [food.id, food]));

export const namesOf = (food: Food): string[] => [food.name, ...(food.also ?? [])];

type Searched = { plain: string; trigrams: ReadonlySet<string> };

const searched = (name: string): Searched => ({ plain: folded(name), trigrams: trigrams(folded(name)) });

const known = foods.map((food) => ({ food, names: namesOf(food).map(searched) }));

/** Names less alike than this are not meant: the threshold of PostgreSQL's pg_trgm. */
const least = 0.3;

/**
 * Foods of the reference whose name, or another name it has, is like what is typed: by shared trigrams, or beginning
 * with it while it is still being typed. The likeliest first, three at most unless said.
 */
export const foodsLike = (typed: string, most = 3): Food[] => {
  const asked = [...new Set([typed, typed.split(',')[0]!])]
    .map(searched)
    .filter(({ plain }) => plain.length > 1);
  const found = known.map(({ food, names }) => {
    const scores = names.flatMap((name) => asked.map((part) => scoreOf(part, name)));
    return { food, score: Math.max(0, ...scores) };
  });
  return found
    .filter(({ score }) => score >= least)
    .sort((a, b) => b.score - a.score || a.food.name.length - b.food.name.length)
    .slice(0, most)
    .map(({ food }) => food);
};

/** The likeness; a name that begins with what is typed is found however long it is, and one but for plurals is first. */
const scoreOf = (typed: Searched, name: Searched): number => {
  if (typed.plain === name.plain) return 2;
  const alike = likeness(typed.trigrams, name.trigrams);
  return name.plain.startsWith(typed.plain) ? least + alike : alike;
};

/** The reference food that bears an ingredient's own name; undefined when none does. */
export const foodNamed = (name: string): Food | undefined =>
  foods.find((food) => namesOf(food).some((one) => sameName(one, name)));

/**
 * The reference food of an ingredient's own name, where it says that less is eaten and the ingredient is entered as
 * eaten whole; undefined when there is nothing to look at.
 */
export const wholeDespite = ({ name, edibleYield }: Ingredient): Food | undefined => {
  if (!edibleYield || !exact(edibleYield.yield).equals(exact('1'))) return undefined;
  const food = foodNamed(name);
  return food?.yield && food.yield !== '1' ? food : undefined;
};

export const foodOf = (id: string): Food | undefined => byId.get(id);

/** The figures of a food as an ingredient keeps them, each with its item number as its source. */
export const figuresOf = (
  food: Food,
): Pick<Ingredient, 'edibleYield' | 'density' | 'weights' | 'cookedYields'> => {
  const { item, refuse, gramsPerMl, measured, weights, cooked = [] } = food;
  const less = refuse ? `, less ${refuse.charAt(0).toLowerCase()}${refuse.slice(1)}` : '';
  return {
    edibleYield: food.yield ? { yield: food.yield, source: `USDA SR28 ${item}${less}` } : null,
    density: gramsPerMl
      ? { gramsPerMl, source: `USDA SR28 ${item}, ${measured?.text} ${measured?.grams} g` }
      : null,
    weights: weights.map(({ unit, grams, item, text }) => ({
      unit,
      grams,
      of: 'prepared' as const,
      source: `USDA SR28 ${item}, ${text}`,
    })),
    cookedYields: cooked.map((one) => ({
      name: one.name,
      yield: one.yield,
      from: one.from,
      source: `USDA SR28 ${one.item}, ${one.text} ${one.grams} g${one.raw ? ` of ${one.of} g raw (${one.raw.item})` : ''}`,
    })),
  };
};
