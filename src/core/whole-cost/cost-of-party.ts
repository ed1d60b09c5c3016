import { costOfEvent, type EventCost } from '../costing.js';
import type { CostLine } from '../facts/cost-line.js';
import type { Event } from '../facts/event.js';
import { type Facts, factsOf } from '../facts/facts.js';
import type { Kitchen } from '../facts/kitchen.js';
import { isFlag } from '../line-problems.js';
import { allocate, toMinor } from '../money.js';
import { Rational, sum } from '../quantity/rational.js';
import { worstFirst } from '../requirements.js';
import { boughtFood, shoppersBeside } from './bought.js';
import { type Food, usedFood } from './food.js';
import { type LinePart, lineCosts } from './line-costs.js';
import type { CostView, FoodCost, WholeCost } from './whole-cost.js';
import { madeOf } from './work.js';

/**
 * What an event costs, food and all beside it, in minor units: exact, and rounded once (halves up) to a total that the
 * food and the parts add up to. In the bought view `beside` are other events that packs are bought for together with
 * this one. A done event counts from the facts it was served with. What isn't known is left out and named.
 */
export const wholeCost = (
  event: Event,
  today: Facts,
  view: CostView,
  beside: readonly Event[] = [],
): WholeCost => {
  const facts = factsOf(event, today);
  const { value: cost, problems } = costOfEvent(event, facts);
  const { food, problems: ofPacks } =
    view === 'used'
      ? { food: usedFood(cost), problems: [] }
      : boughtFood(event, cost, facts, shoppersBeside(event, today, beside));
  const made = madeOf(cost.courses.flatMap(({ dishes }) => dishes.map(({ need }) => need)));
  const { lines, problems: ofLines } = lineCosts({ event, facts, guests: cost.guests, made }, food);
  const all = [...problems.filter((one) => !isFlag(one)), ...ofPacks, ...ofLines];
  return { view, ...summed(cost, food, lines), problems: worstFirst(all) };
};

const summed = ({ guests }: EventCost, food: Food, lines: readonly LinePart[]) => {
  const shares = [food.exact, ...lines.map((line) => line.exact ?? Rational.zero)];
  const exact = sum(shares);
  const total = toMinor(exact);
  const [ofFood, ...parts] = allocate(total, shares);
  return {
    guests,
    food: inMinor(food, ofFood!),
    parts: lines.map((line, i) => ({ ...line, cost: parts[i]! })),
    exact,
    total,
    complete: food.complete && lines.every(({ complete }) => complete),
    aGuest: guests > 0 ? toMinor(exact.over(Rational.of(guests))) : undefined,
  };
};

const inMinor = (food: Food, cost: number): FoodCost => {
  const parts = allocate(
    cost,
    food.dishes.map(({ exact }) => exact),
  );
  return { ...food, cost, dishes: food.dishes.map((dish, i) => ({ ...dish, cost: parts[i]! })) };
};

/** The cost lines a new event starts with: the kitchen's usual ones, from then on its own. */
export const startingCosts = (kitchen: Kitchen): CostLine[] => structuredClone(kitchen.costs);
