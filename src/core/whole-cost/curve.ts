import { type Event } from '../facts/event.js';
import { type Facts, factsOf } from '../facts/facts.js';
import { toMinor } from '../money.js';
import { Rational, sum } from '../quantity/rational.js';
import { type Shopper, shoppersBeside } from './bought.js';
import { wholeCost } from './cost-of-party.js';
import { foodAt, type FoodAt, foodGrowing } from './curve-food.js';
import { type Jump, jumpsBetween, type Stepped, stepped } from './curve-jumps.js';
import { stemsAt } from './growing.js';
import { withHeadCount } from './head-count.js';
import { lineCosts } from './line-costs.js';
import type { CostView } from './whole-cost.js';

/** What an event costs with so many guests, as it would be worked out for them alone. */
export type CurvePoint = {
  guests: number;
  event: Event;
  food: { exact: Rational; complete: boolean };
  exact: Rational;
  /** Minor units, rounded once, halves up: in all, and of a guest. */
  total: number;
  aGuest: number;
  complete: boolean;
  /** Where a guest costs more than with one guest fewer: what steps up, the dearest first. */
  jumps: Jump[];
};

export type Range = { from: number; to: number };
export type Curve = { view: CostView; points: CurvePoint[] };
