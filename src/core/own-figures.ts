import type { Ingredient } from './facts/ingredient.js';
import { type Food, figuresOf, foodNamed, foods, foodsLike } from './foods.js';
import { normalName } from './names.js';
import { exact } from './quantity/amount.js';

type Figures = ReturnType<typeof figuresOf>;

/** A figure of an ingredient that is not the reference's: where it stands, and what is published for it. */
export type Departure = { at: string; published: string; item: string; from?: 'bought' | 'prepared' };

const cited = /USDA SR28 (\d{5})/;
const itemOf = (source: string | undefined): string | undefined => cited.exec(source ?? '')?.[1];

/**
 * The reference food that an ingredient's figures are held against: the one whose item number stands in their sources,
 * else the one of its own name; undefined when there is none.
 */
export const referenceOf = (ingredient: Ingredient): Food | undefined => {
  const { edibleYield, density, weights, cookedYields, name } = ingredient;
  const items = [edibleYield, density, ...weights, ...cookedYields].map((figure) => itemOf(figure?.source));
  const meant = foods.filter(({ item }) => items.includes(item));
  if (meant.length < 2) return meant[0] ?? foodNamed(name);
  return foodsLike(name, foods.length).find((food) => meant.includes(food)) ?? meant[0];
};

const equal = (a: string, b: string): boolean => exact(a).equals(exact(b));

/** Where an ingredient's own figures differ from those of its reference food. */
export const departuresFrom = (food: Food, ingredient: Ingredient): Departure[] => {
  const { edibleYield, density, weights, cookedYields } = figuresOf(food);
  const own = ingredient;
  const found: (Departure | false | null)[] = [
    edibleYield && own.edibleYield && departure('edibleYield', own.edibleYield.yield, edibleYield, food),
    density && own.density && departure('density', own.density.gramsPerMl, density, food),
    ...weights.map((weight) => {
      const mine = own.weights.find(({ unit, of }) => unit === weight.unit && of === weight.of);
      return mine ? departure(`weights/${weight.unit}`, mine.grams, weight, food) : null;
    }),
    ...cookedYields.map((cooked) => {
      const mine = own.cookedYields.find(({ name }) => isNamed(name, cooked.name));
      const same = mine?.from === cooked.from && equal(mine.yield, cooked.yield);
      return mine && !same ? { ...of(`cookedYields/${cooked.name}`, cooked, food), from: cooked.from } : null;
    }),
  ];
  return found.filter((one) => one !== null && one !== false);
};

type Published = { source: string; yield?: string; gramsPerMl?: string; grams?: string };

const figureOf = (one: Published): string => one.yield ?? one.gramsPerMl ?? one.grams ?? '0';

const departure = (at: string, own: string, one: Published, food: Food): Departure | false =>
  !equal(own, figureOf(one)) && of(at, one, food);

const of = (at: string, one: Published, food: Food): Departure => ({
  at,
  published: figureOf(one),
  item: itemOf(one.source) ?? food.item,
});

/** An ingredient with one figure taken back from the reference: "edibleYield", "density" or, by name, "weights/each". */
export const takenFrom = (food: Food, ingredient: Ingredient, at: string): Ingredient => {
  const given = figuresOf(food);
  const [field = '', ...rest] = at.split('/');
  const name = rest.join('/');
  if (field === 'edibleYield' && given.edibleYield) return { ...ingredient, edibleYield: given.edibleYield };
  if (field === 'density' && given.density) return { ...ingredient, density: given.density };
  const weight = field === 'weights' && given.weights.find(({ unit }) => unit === name);
  if (weight) return { ...ingredient, weights: put(ingredient.weights, weight, (one) => one.unit === name) };
  const cooked = field === 'cookedYields' && given.cookedYields.find((one) => isNamed(one.name, name));
  if (!cooked) return ingredient;
  const { cookedYields } = ingredient;
  return { ...ingredient, cookedYields: put(cookedYields, cooked, (one) => isNamed(one.name, name)) };
};

const isNamed = (a: string, b: string): boolean => normalName(a) === normalName(b);

const put = <T>(list: readonly T[], row: T, same: (one: T) => boolean): T[] =>
  list.some(same) ? list.map((one) => (same(one) ? row : one)) : [...list, row];

/** Where the reference has a figure and the ingredient has none, as `takenFrom` names it. */
export const lackingOf = (food: Food, ingredient: Ingredient): string[] => {
  const given: Figures = figuresOf(food);
  const lacking = [
    given.edibleYield && !ingredient.edibleYield ? ['edibleYield'] : [],
    given.density && !ingredient.density ? ['density'] : [],
    given.weights
      .filter(({ unit }) => !ingredient.weights.some((one) => one.unit === unit))
      .map(({ unit }) => `weights/${unit}`),
    given.cookedYields
      .filter(({ name }) => !ingredient.cookedYields.some((one) => isNamed(one.name, name)))
      .map(({ name }) => `cookedYields/${name}`),
  ];
  return lacking.flat();
};

/**
 * The source that a figure may bear: one that cites a USDA item whose published figure is another says so instead of
 * lending the number a name that is not its own. The item number stays, and with it the way back.
 */
export const honestSource = (source: string, figure: string, at: string): string => {
  const item = /^USDA SR28 (\d{5})/.exec(source)?.[1];
  const published = item === undefined ? [] : publishedFor(item, at);
  if (published.length === 0 || published.some((one) => equal(one, figure))) return source;
  return `${own}${item}`;
};

const own = 'own figure, instead of USDA SR28 ';

/** Whether a source says no more than that the figure is the cook's own. */
export const isOwn = (source: string): boolean => source.startsWith(own);

const publishedFor = (item: string, at: string): string[] =>
  foods.flatMap((food) => {
    const { edibleYield, density, weights, cookedYields } = figuresOf(food);
    const [field, name] = at.split('/');
    const own = {
      edibleYield: edibleYield ? [edibleYield] : [],
      density: density ? [density] : [],
      weights: weights.filter(({ unit }) => unit === name),
      cookedYields: cookedYields.filter((one) => isNamed(one.name, name ?? '')),
    }[field as keyof Figures];
    return (own as Published[]).filter(({ source }) => itemOf(source) === item).map(figureOf);
  });
