import { makes } from '../batch.js';
import type { PackPrice } from '../costing.js';
import type { Event } from '../facts/event.js';
import type { Facts } from '../facts/facts.js';
import type { Ingredient } from '../facts/ingredient.js';
import type { Recipe } from '../facts/recipe.js';
import { ingredientOf, recipeOf } from '../lookup.js';
import { Rational, sum, together } from '../quantity/rational.js';
import { type Shopper, sharedPacks } from './bought.js';
import type { Stepped, What } from './curve-jumps.js';
import {
  type At,
  type Growing,
  growingOf,
  type Stem,
  type Straight,
  type Sum,
  stemsAt,
  straight,
  sumAt,
  sumOf,
  unreduced,
  wholeAt,
} from './growing.js';
import { isSamePack } from './pack-uses.js';
import type { CostView } from './whole-cost.js';
import type { Made } from './work.js';

/** Packs of one ingredient; `others` are those who buy the same, before and after this event by their keys. */
type Packs = { what: What; each: number; need: Straight; others: Others | undefined };
type Others = { before: bigint[]; after: bigint[]; d: bigint };
type Making = { recipe: Recipe; makes: Made['makes']; batches: Straight | undefined };

/** An event's food, written once so that it is soon said for any head-count. */
export type FoodGrowing = {
  growing: Growing;
  /** What one of each stem costs as used, in minor units, exact; and all of them together. */
  rates: Rational[];
  used: Straight;
  packs: Packs[];
  made: Making[];
};

export const foodGrowing = (event: Event, facts: Facts, beside: readonly Shopper[]): FoodGrowing => {
  const growing = growingOf(event, facts);
  const rates = growing.stems.map(() => Rational.zero);
  const packs: Packs[] = [];
  for (const [ingredient, { pack, sum: taken }] of growing.taken) {
    const need = new Map([...taken].map(([stem, part]) => [stem, part.over(pack.size.value)]));
    for (const [stem, part] of need) rates[stem] = rates[stem]!.plus(part.times(pack.price));
    const others = othersOf(event.key, ingredient, pack, beside);
    packs.push({
      what: { of: 'packs', ingredient, shared: others !== undefined },
      each: Number(pack.price.round()),
      need: straight(need),
      others,
    });
  }
  return { growing, rates, used: straight(new Map(rates.entries())), packs, made: makingOf(growing, facts) };
};

const makingOf = ({ made }: Growing, facts: Facts): Making[] => {
  const all = new Map<Recipe, Sum | undefined>();
  for (const { recipe, batches } of made) {
    const before = all.has(recipe) ? all.get(recipe) : new Map();
    all.set(recipe, before && batches && sumOf(before, batches));
  }
  return [...all].map(([recipe, batches]) => ({
    recipe,
    makes: makes(recipe, facts),
    batches: batches && straight(batches),
  }));
};

/** The food at one head-count: what it costs in a view, exact, what is made, and, when asked, what comes in whole ones. */
export type FoodAt = { exact: Rational; made: Made[]; stepped: () => Stepped[] };

export const foodAt = (food: FoodGrowing, event: Event, view: CostView, facts: Facts): FoodAt => {
  const at = stemsAt(food.growing, event);
  const made = food.made.map(({ recipe, makes, batches }) => ({
    recipe,
    makes,
    batches: batches && sumAt(batches, at),
  }));
  if (view === 'bought') return { ...boughtAt(food, at), made };
  const stepped = () =>
    food.growing.stems.flatMap((stem, i) => piecesAt(stem, at.values[i]!, food.rates[i]!, facts));
  return { exact: sumAt(food.used, at), made, stepped };
};

const boughtAt = ({ packs }: FoodGrowing, at: At): Omit<FoodAt, 'made'> => {
  const paid = packs.map((one) => packsAt(one, at));
  const all = paid.reduce((so, { cost }) => so + cost, 0);
  return {
    exact: Number.isSafeInteger(all) ? Rational.of(all) : sum(paid.map(({ cost }) => Rational.of(cost))),
    stepped: () =>
      paid.map(({ count, cost }, i) => ({ what: packs[i]!.what, count, cost: () => Rational.of(cost) })),
  };
};

/** In the order of their keys, as `boughtFood` has them, so that each penny left over goes to the same one. */
const othersOf = (
  event: string,
  ingredient: Ingredient,
  { price: each, size }: PackPrice,
  beside: readonly Shopper[],
): Others | undefined => {
  const same = beside.flatMap(({ key, uses }) => {
    const use = uses.get(ingredient.key);
    return use && isSamePack(use, { each, size }) ? [{ key, need: use.need }] : [];
  });
  if (same.length === 0) return undefined;
  same.sort((a, b) => (a.key < b.key ? -1 : 1));
  const { ns, d } = together(same.map(({ need }) => need));
  const first = same.filter(({ key }) => key < event).length;
  return { before: ns.slice(0, first), after: ns.slice(first), d };
};

const packsAt = ({ each, need, others }: Packs, at: At): { count: number; cost: number } => {
  if (!others) {
    const count = wholeAt(need, at);
    return { count, cost: count * each };
  }
  const { n, d } = unreduced(need, at);
  const needs = [...others.before.map((one) => one * d), n * others.d, ...others.after.map((one) => one * d)];
  const { packs, cost } = sharedPacks(needs, d * others.d, each, others.before.length);
  return { count: packs, cost };
};

const dozen = Rational.of(12);

const piecesAt = (stem: Stem, value: Rational, rate: Rational, facts: Facts): Stepped[] => {
  if ('dish' in stem) return [];
  const { line, of: recipe, unit } = stem;
  const { scales, item } = line;
  if ((scales !== 'pieces' && scales !== 'batch') || stem.base.isZero) return [];
  const { name } =
    'ingredient' in item ? ingredientOf(item.ingredient, facts) : recipeOf(item.component, facts);
  const cost = () => value.times(rate);
  if (scales === 'batch')
    return [{ what: { of: 'lots', name, recipe }, count: Number(value.over(stem.base).ceil()), cost }];
  const count = Number((unit === 'dozen' ? value.times(dozen) : value).ceil());
  return [{ what: { of: 'pieces', name, recipe }, count, cost }];
};
