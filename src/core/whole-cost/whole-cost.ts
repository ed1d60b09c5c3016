import type { DishCost } from '../costing.js';
import type { CostLine } from '../facts/cost-line.js';
import type { Ingredient } from '../facts/ingredient.js';
import type { Problem } from '../problem.js';
import type { Rational } from '../quantity/rational.js';

/**
 * The two ways to count food: `used` is what the recipes use, at the pack's unit price; `bought` is the whole packs, or
 * this event's share of packs that are bought for several events, whose shares add up to the receipt.
 */
export type CostView = 'used' | 'bought';

/** A cost of an event beside its food, worked out for so many guests. */
export type CostPart = {
  line: CostLine;
  /** In minor units, exact, as far as known; undefined when not known. */
  exact: Rational | undefined;
  /** Its part of the total in whole minor units: the parts and the food add up to it. */
  cost: number;
  /** false when something of it isn't known; the problems name what. */
  complete: boolean;
  /** What it was counted by, where it goes by these: hours of all together, people, steps begun. */
  hours: Rational | undefined;
  people: number | undefined;
  steps: number | undefined;
};

/** A dish's part of the food in this view; the dishes add up to the food. Bought packs are spread by what is used. */
export type DishPart = {
  dish: DishCost;
  exact: Rational;
  cost: number;
  complete: boolean;
};

/** Whole packs of one ingredient, over all events they are bought for together, and what this event pays of them. */
export type PackPart = {
  ingredient: Ingredient;
  /** Packs that this event uses, as far as is known; exact. */
  need: Rational;
  /** Whole packs bought for all the events together. */
  packs: number;
  /** What one of them costs, and all of them, in minor units. */
  each: number;
  receipt: number;
  /** This event's share, by what each uses; the shares of all the events add up to the receipt. */
  cost: number;
  /** false when a use of it isn't known, here or at an event beside. */
  complete: boolean;
};

export type FoodCost = {
  exact: Rational;
  /** Its part of the total in whole minor units. */
  cost: number;
  complete: boolean;
  dishes: DishPart[];
  /** What is bought for it; only in the bought view. */
  packs: PackPart[];
};

/** What an event costs in one view; incomplete totals hold only what is known. */
export type WholeCost = {
  view: CostView;
  guests: number;
  food: FoodCost;
  /** In the order of the event's lines. */
  parts: CostPart[];
  exact: Rational;
  /** Minor units, rounded once, halves up. */
  total: number;
  complete: boolean;
  /** Of a guest, minor units rounded half up; undefined without guests. */
  aGuest: number | undefined;
  problems: Problem[];
};
