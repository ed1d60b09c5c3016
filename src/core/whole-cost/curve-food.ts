import { makes } from '../batch.js';
import type { Event } from '../facts/event.js';
import type { Facts } from '../facts/facts.js';
import type { Recipe } from '../facts/recipe.js';
import { ingredientOf, recipeOf } from '../lookup.js';
import { Rational, sum } from '../quantity/rational.js';
import { packPart, type Shopper } from './bought.js';
import type { Begun, Stepped, What } from './curve-jumps.js';
import { type Growing, growingOf, type Stem, type Sum, stemsAt, sumAt, sumOf } from './growing.js';
import type { PackUse } from './pack-uses.js';
import type { CostView } from './whole-cost.js';
import type { Made } from './work.js';

/** An event's food, written once so that it is soon said for any head-count. */
export type FoodGrowing = {
  growing: Growing;
  /** What one of each stem costs as used, in minor units, exact. */
  rates: Rational[];
  packs: { use: PackUse; need: Sum; shared: readonly Shopper[] }[];
  made: { recipe: Recipe; makes: Made['makes']; batches: Sum | undefined }[];
};

export const foodGrowing = (event: Event, facts: Facts, beside: readonly Shopper[]): FoodGrowing => {
  const growing = growingOf(event, facts);
  const rates = growing.stems.map(() => Rational.zero);
  const packs: FoodGrowing['packs'] = [];
  for (const [ingredient, { pack, sum: taken }] of growing.taken) {
    const need = new Map([...taken].map(([stem, part]) => [stem, part.over(pack.size.value)]));
    for (const [stem, part] of need) rates[stem] = rates[stem]!.plus(part.times(pack.price));
    const { price: each, size } = pack;
    const use = { ingredient, each, size, need: Rational.zero, ofDishes: new Map(), complete: true };
    packs.push({ use, need, shared: beside.filter(({ uses }) => uses.has(ingredient.key)) });
  }
  return { growing, rates, packs, made: madeGrowing(growing, facts) };
};

const madeGrowing = ({ made }: Growing, facts: Facts): FoodGrowing['made'] => {
  const all = new Map<Recipe, Sum | undefined>();
  for (const { recipe, batches } of made) {
    const before = all.has(recipe) ? all.get(recipe) : new Map();
    all.set(recipe, before && batches && sumOf(before, batches));
  }
  return [...all].map(([recipe, batches]) => ({ recipe, makes: makes(recipe, facts), batches }));
};

/** The food at one head-count: what it costs in a view, exact, what is made, and what comes in whole ones. */
export type FoodAt = { exact: Rational; made: Made[]; begun: Begun[]; stepped: Stepped[] };

export const foodAt = (food: FoodGrowing, event: Event, view: CostView, facts: Facts): FoodAt => {
  const { growing, rates } = food;
  const at = stemsAt(growing, event);
  const made = food.made.map(({ batches, ...one }) => ({ ...one, batches: batches && sumAt(batches, at) }));
  const begun = made.map(({ recipe, batches }) => ({ recipe, begun: Number(batches?.ceil() ?? 0n) }));
  if (view === 'bought') {
    const stepped = food.packs.map((one) => packsAt(one, event.key, at));
    return { exact: sum(stepped.map(({ cost }) => cost)), made, begun, stepped };
  }
  const costs = at.map((value, stem) => value.times(rates[stem]!));
  const stepped = growing.stems.flatMap((stem, i) => piecesAt(stem, at[i]!, costs[i]!, facts));
  return { exact: sum(costs), made, begun, stepped };
};

const packsAt = (
  { use, need, shared }: FoodGrowing['packs'][number],
  event: string,
  at: Rational[],
): Stepped => {
  const { ingredient } = use;
  const what: What = { of: 'packs', ingredient };
  const packs = sumAt(need, at);
  if (shared.length > 0) {
    const part = packPart(event, { ...use, need: packs }, shared, []);
    return { what, count: part.packs, cost: Rational.of(part.cost) };
  }
  const count = Number(packs.ceil());
  return { what, count, cost: Rational.of(count * Number(use.each.round())) };
};

const dozen = Rational.of(12);

const piecesAt = (stem: Stem, value: Rational, cost: Rational, facts: Facts): Stepped[] => {
  if ('dish' in stem) return [];
  const { line, of: recipe, unit } = stem;
  const { name } =
    'ingredient' in line.item
      ? ingredientOf(line.item.ingredient, facts)
      : recipeOf(line.item.component, facts);
  if (line.scales === 'pieces') {
    const count = Number((unit === 'dozen' ? value.times(dozen) : value).ceil());
    return [{ what: { of: 'pieces', name, recipe }, count, cost }];
  }
  if (line.scales !== 'batch' || stem.base.isZero) return [];
  return [{ what: { of: 'lots', name, recipe }, count: Number(value.over(stem.base).ceil()), cost }];
};
