import { costOfEvent, type EventCost } from '../costing.js';
import type { Event } from '../facts/event.js';
import { type Facts, factsOf } from '../facts/facts.js';
import { allocateWhole } from '../money.js';
import type { Problem } from '../problem.js';
import { Rational, sum, together } from '../quantity/rational.js';
import type { Food } from './food.js';
import { isSamePack, type PackUse, packUses } from './pack-uses.js';
import type { PackPart } from './whole-cost.js';

/** What one event uses in packs, and what is missing of that. */
export type Shopper = { key: string; uses: ReadonlyMap<string, PackUse>; problems: readonly Problem[] };

/** What events beside one use in packs, each by its own facts; an event isn't beside itself. */
export const shoppersBeside = (event: Event, today: Facts, beside: readonly Event[]): Shopper[] =>
  beside
    .filter(({ key }) => key !== event.key)
    .map((other) => {
      const facts = factsOf(other, today);
      const { value, problems } = costOfEvent(other, facts);
      return { key: other.key, uses: packUses(value, facts), problems };
    });

/**
 * The food of an event in whole packs, in minor units. Packs of an ingredient are rounded up once over all the events
 * that buy the same one at the same price, and each pays its share by what it uses, in whole minor units that add up
 * to the receipt. A dish has its part of every pack by what it uses.
 */
export const boughtFood = (
  event: Event,
  cost: EventCost,
  facts: Facts,
  beside: readonly Shopper[],
): { food: Food; problems: Problem[] } => {
  const problems: Problem[] = [];
  const uses = packUses(cost, facts);
  const packs = [...uses.values()]
    .map((use) => packPart(event.key, use, beside, problems))
    .filter(({ need, complete }) => !need.isZero || !complete);
  const dishes = cost.courses.flatMap((course) => course.dishes);
  const parts = new Map(dishes.map((dish) => [dish, { exact: [Rational.zero], complete: dish.complete }]));
  for (const { ingredient, cost: paid, need, complete } of packs)
    for (const [dish, used] of uses.get(ingredient.key)!.ofDishes) {
      const part = parts.get(dish)!;
      if (!need.isZero) part.exact.push(Rational.of(paid).times(used).over(need));
      part.complete &&= complete;
    }
  return {
    food: {
      exact: sum(packs.map((part) => Rational.of(part.cost))),
      complete: cost.complete && packs.every(({ complete }) => complete),
      dishes: dishes.map((dish) => {
        const { exact, complete } = parts.get(dish)!;
        return { dish, exact: sum(exact), complete };
      }),
      packs,
    },
    problems,
  };
};

/**
 * Whole packs for all who buy together, needs being so many packs over one denominator, and what one of them pays: by
 * what each uses, in whole minor units that add up to the receipt.
 */
export const sharedPacks = (
  needs: readonly bigint[],
  d: bigint,
  each: number,
  own: number,
): { packs: number; cost: number } => {
  const all = needs.reduce((sum, need) => sum + need, 0n);
  const packs = Number((all + d - 1n) / d);
  return { packs, cost: allocateWhole(packs * each, needs)[own]! };
};

const packPart = (event: string, use: PackUse, beside: readonly Shopper[], problems: Problem[]): PackPart => {
  const { ingredient, need } = use;
  const shares = [{ key: event, need }];
  let { complete } = use;
  for (const { key, uses, problems: theirs } of beside) {
    const other = uses.get(ingredient.key);
    if (!other || !isSamePack(use, other)) continue;
    shares.push({ key, need: other.need });
    if (other.complete) continue;
    complete = false;
    problems.push(...theirs.filter((one) => isAbout(one, ingredient.key)));
  }
  // In one order, whichever of the events is asked about, so that each penny left over goes to the same one.
  shares.sort((a, b) => (a.key < b.key ? -1 : 1));
  const each = Number(use.each.round());
  const { ns, d } = together(shares.map((share) => share.need));
  const own = shares.findIndex(({ key }) => key === event);
  const { packs, cost } = sharedPacks(ns, d, each, own);
  return { ingredient, need, packs, each, receipt: packs * each, cost, complete };
};

const isAbout = ({ weight, subject }: Problem, ingredient: string): boolean =>
  weight === 'ask' && (subject.entity === 'recipe' || subject.key === ingredient);
