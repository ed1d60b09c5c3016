import { dishesEaten } from './afterwards.js';
import { costOfEvent } from './costing.js';
import type { Event } from './facts/event.js';
import { type Facts, factsOf } from './facts/facts.js';
import { Rational, sum } from './quantity/rational.js';

/** A dish as it was sold by itself: portions, and what they came to and cost together in minor units, exact. */
export type Sold = { key: string; name: string; portions: Rational; income: Rational; cost: Rational };

/** The four classes by the names of Kasavana and Smith. */
export type MenuClass = 'star' | 'plowhorse' | 'puzzle' | 'dog';

export type Engineered = Sold & {
  price: Rational;
  /** Of a portion: its price less its food, minor units, exact. */
  margin: Rational;
  /** Its part of all portions sold, per cent, exact. */
  mix: Rational;
  popular: boolean;
  profitable: boolean;
  class: MenuClass;
};

export type Engineering = {
  dishes: Engineered[];
  portions: Rational;
  /** The mean margin of a portion, each dish counted as often as it was sold; undefined while nothing was. */
  meanMargin: Rational | undefined;
  /** Per cent of all portions above which a dish is popular: 70 % of an even share. */
  popularFrom: Rational | undefined;
};

const hundred = Rational.of(100);
const seventy = Rational.of(7, 10);

/**
 * Menu engineering after Kasavana and Smith (1982): a margin is high above the mean margin of all portions sold, a dish
 * is popular above 70 per cent of an even share of them. A dish at the very line is not above it. Exact, unrounded.
 */
export const menuEngineering = (all: readonly Sold[]): Engineering => {
  const sold = all.filter(({ portions }) => portions.sign > 0);
  const portions = sum(sold.map((one) => one.portions));
  if (sold.length === 0) return { dishes: [], portions, meanMargin: undefined, popularFrom: undefined };
  const meanMargin = sum(sold.map(({ income, cost }) => income.minus(cost))).over(portions);
  const popularFrom = seventy.times(hundred).over(Rational.of(sold.length));
  const dishes = sold.map((one) => {
    const margin = one.income.minus(one.cost).over(one.portions);
    const mix = one.portions.over(portions).times(hundred);
    const [popular, profitable] = [mix.compare(popularFrom) > 0, margin.compare(meanMargin) > 0];
    const name: MenuClass = popular ? (profitable ? 'star' : 'plowhorse') : profitable ? 'puzzle' : 'dog';
    return { ...one, price: one.income.over(one.portions), margin, mix, popular, profitable, class: name };
  });
  return { dishes: dishes.sort(byMargin), portions, meanMargin, popularFrom };
};

/** What a dish brings in all first. */
const byMargin = (a: Engineered, b: Engineered): number =>
  b.margin.times(b.portions).compare(a.margin.times(a.portions)) || (a.key < b.key ? -1 : 1);

/** A dish that can't be judged, and why. */
export type NotSold = { key: string; name: string; why: 'no-price' | 'no-cost' | 'nothing-eaten' };

/**
 * The dishes of events that have a price of their own, one recipe as one dish: portions eaten where that was noted, else
 * portions made, at the price and the food cost of each event. Those without a price, whose cost isn't known, or of
 * which nothing was eaten are named apart.
 */
export const dishesSold = (
  events: readonly Event[],
  today: Facts,
): { sold: Sold[]; apart: NotSold[]; noted: number; made: number } => {
  const sold = new Map<string, Sold>();
  const apart = new Map<string, NotSold>();
  let [noted, made] = [0, 0];
  for (const event of events)
    for (const one of soldAt(event, today)) {
      if ('why' in one) {
        if (!apart.has(one.key)) apart.set(one.key, one);
        continue;
      }
      if (one.noted) noted += 1;
      else made += 1;
      const before = sold.get(one.key);
      sold.set(one.key, before ? joined(before, one) : one);
    }
  for (const key of sold.keys()) apart.delete(key);
  return { sold: [...sold.values()], apart: [...apart.values()], noted, made };
};

const joined = (a: Sold, b: Sold): Sold => ({
  ...a,
  portions: a.portions.plus(b.portions),
  income: a.income.plus(b.income),
  cost: a.cost.plus(b.cost),
});

const soldAt = (event: Event, today: Facts): ((Sold & { noted: boolean }) | NotSold)[] => {
  const { courses } = costOfEvent(event, factsOf(event, today)).value;
  const costs = new Map(courses.flatMap(({ dishes }) => dishes.map((cost) => [cost.need.dish, cost])));
  return dishesEaten(event, today).map(({ dish, recipe: { key, name }, made, eaten }) => {
    const cost = costs.get(dish)!;
    const portions = eaten ?? made;
    if (dish.price === null) return { key, name, why: 'no-price' };
    if (!cost.complete) return { key, name, why: 'no-cost' };
    if (portions.isZero || made.isZero) return { key, name, why: 'nothing-eaten' };
    const aPortion = cost.exact.over(made);
    const income = Rational.of(dish.price).times(portions);
    return { key, name, portions, income, cost: aPortion.times(portions), noted: eaten !== undefined };
  });
};
