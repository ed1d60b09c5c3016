import { batchesFor, cupOf, makes } from '../batch.js';
import { type PackPrice, packPrice } from '../costing.js';
import type { Dish, Event } from '../facts/event.js';
import type { Facts } from '../facts/facts.js';
import type { Ingredient } from '../facts/ingredient.js';
import type { Line, Recipe } from '../facts/recipe.js';
import { grown } from '../growth.js';
import { type LineNeed, lineNeed } from '../line-need.js';
import { recipeOf } from '../lookup.js';
import { exact } from '../quantity/amount.js';
import { Rational, together } from '../quantity/rational.js';
import { quantity } from '../quantity/units.js';
import { portionsOf } from '../requirements.js';
import { closureOf } from '../scaling.js';
import { boughtIn, isMissing } from '../weighing.js';

/** So much of each stem, by its number. */
export type Sum = Map<number, Rational>;

/**
 * What all of an event grows from: the portions of dishes that the same guests eat, and, above those, each line that
 * doesn't grow straight (whole pieces, herbs, amounts once for each batch).
 */
export type Stem =
  | { dish: Dish; recipe: Recipe }
  | { line: Line; of: Recipe; unit: string; base: Rational; batches: Sum };

export type Growing = {
  stems: Stem[];
  /** What is taken of each ingredient that has a price, as purchased, in the base of its pack. */
  taken: Map<Ingredient, { pack: PackPrice; sum: Sum }>;
  /** Batches of each recipe of each dish; undefined where a use of it can't be worked out. */
  made: { dish: Dish; recipe: Recipe; batches: Sum | undefined }[];
};

/**
 * All of an event's food as sums over what grows with the guests, worked out once; exact. `stemsAt` says how much of
 * each stem there is for so many guests.
 */
export const growingOf = (event: Event, facts: Facts): Growing => {
  const growing: Growing = { stems: [], taken: new Map(), made: [] };
  const eaten = new Map<string, number>();
  for (const dish of event.courses.flatMap(({ dishes }) => dishes)) {
    const recipe = recipeOf(dish.recipe, facts);
    const alike = JSON.stringify([recipe.byPiece, dish.eaters]);
    if (!eaten.has(alike)) eaten.set(alike, growing.stems.push({ dish, recipe }) - 1);
    const each = batchesEach(dish, recipe, facts);
    walk(growing, dish, recipe, each && new Map([[eaten.get(alike)!, each]]), facts);
  }
  return growing;
};

/** Batches in one portion of a dish; undefined where the recipe doesn't say what it makes. */
const batchesEach = (dish: Dish, recipe: Recipe, facts: Facts): Rational | undefined => {
  const asked = dish.portion
    ? quantity(exact(dish.portion.amount), dish.portion.unit, cupOf(recipe, facts))
    : { value: Rational.one, base: 'portion' };
  return batchesFor(makes(recipe, facts), asked);
};

const walk = (growing: Growing, dish: Dish, root: Recipe, batches: Sum | undefined, facts: Facts): void => {
  const all = new Map<Recipe, Sum | undefined>([[root, batches]]);
  for (const recipe of closureOf(root, facts)) {
    const of = all.get(recipe);
    growing.made.push({ dish, recipe, batches: of });
    for (const line of recipe.lines) {
      const need = lineNeed(line, recipe, Rational.one, facts);
      const amount = of && need.amount && amountOf(growing, need, recipe, of);
      if (need.component) use(all, need, amount);
      else if (amount) take(growing, need, amount, facts);
    }
  }
};

/** What a line takes in its unit: so much of what its recipe grows from, or a stem of its own where that isn't straight. */
const amountOf = ({ stems }: Growing, { line, unit, base }: LineNeed, of: Recipe, batches: Sum): Sum => {
  const { scales } = line;
  if (scales === 'straight' || scales === 'flour' || scales === 'taste') return times(batches, base!);
  return new Map([[stems.push({ line, of, unit, base: base!, batches }) - 1, Rational.one]]);
};

/** Adds a component's use; one that can't be worked out leaves open how much of it is made, as `scale` does. */
const use = (all: Map<Recipe, Sum | undefined>, need: LineNeed, amount: Sum | undefined): void => {
  const component = need.component!;
  const before = all.has(component) ? all.get(component) : new Map();
  if (need.line.amount === null) all.set(component, before);
  else {
    const batches = amount && need.batches && times(amount, each(need.batches, need.amount!));
    all.set(component, before && batches && sumOf(before, batches));
  }
};

const take = ({ taken }: Growing, need: LineNeed, amount: Sum, facts: Facts): void => {
  const ingredient = need.ingredient!;
  if (!need.bought || ingredient.notBought) return;
  const pack = taken.get(ingredient)?.pack ?? packPrice(ingredient, facts);
  if ('sentence' in pack) return;
  const inPack = boughtIn(ingredient, need.bought, pack.size.base);
  if (isMissing(inPack)) return;
  const sum = times(amount, each(inPack, need.amount!));
  taken.set(ingredient, { pack, sum: sumOf(taken.get(ingredient)?.sum ?? new Map(), sum) });
};

/** How much in one of a line's unit; of a line that takes nothing, nothing. */
const each = (all: Rational, amount: Rational): Rational =>
  amount.isZero ? Rational.zero : all.over(amount);

const times = (sum: Sum, by: Rational): Sum =>
  new Map([...sum].map(([stem, part]) => [stem, part.times(by)]));

/** Two sums together. */
export const sumOf = (a: Sum, b: Sum): Sum => {
  const sum = new Map(a);
  for (const [stem, part] of b) sum.set(stem, part.plus(sum.get(stem) ?? Rational.zero));
  return sum;
};

/** How much of each stem there is, and the same over one denominator. */
export type At = { values: Rational[]; ns: bigint[]; d: bigint };

/** How much of each stem there is for the guests of an event; exact. */
export const stemsAt = ({ stems }: Growing, event: Event): At => {
  const values: Rational[] = [];
  for (const stem of stems)
    values.push(
      'dish' in stem
        ? portionsOf(stem.dish, stem.recipe, event)
        : grown(stem.base, stem.unit, stem.line.scales, sumOver(stem.batches, values)),
    );
  return { values, ...together(values) };
};

const sumOver = (sum: Sum, values: readonly Rational[]): Rational => {
  let value = Rational.zero;
  for (const [stem, part] of sum) value = value.plus(values[stem]!.times(part));
  return value;
};

/** A sum over one denominator: whole numbers are soon added up at any head-count, fractions are not. */
export type Straight = { stems: number[]; ns: bigint[]; d: bigint };

export const straight = (sum: Sum): Straight => ({ stems: [...sum.keys()], ...together([...sum.values()]) });

/** What a sum comes to, as a fraction that is not reduced. */
export const unreduced = ({ stems, ns, d }: Straight, at: At): { n: bigint; d: bigint } => {
  let n = 0n;
  for (let i = 0; i < stems.length; i += 1) n += ns[i]! * at.ns[stems[i]!]!;
  return { n, d: d * at.d };
};

/** What a sum comes to, exact. */
export const sumAt = (sum: Straight, at: At): Rational => {
  const { n, d } = unreduced(sum, at);
  return Rational.of(n, d);
};

/** What a sum that is not below zero comes to, rounded up to whole ones. */
export const wholeAt = (sum: Straight, at: At): number => {
  const { n, d } = unreduced(sum, at);
  return Number((n + d - 1n) / d);
};
