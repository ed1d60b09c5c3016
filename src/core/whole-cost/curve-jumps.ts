import type { CostLine } from '../facts/cost-line.js';
import type { Group } from '../facts/event.js';
import type { Ingredient } from '../facts/ingredient.js';
import type { Recipe } from '../facts/recipe.js';
import { Rational } from '../quantity/rational.js';

/** What comes in whole ones only. */
export type What =
  | { of: 'people' | 'steps'; line: CostLine }
  /** Hours of cooking, ovens or rings, which each batch begun takes again. */
  | { of: 'work'; line: CostLine; batches: { recipe: Recipe; to: number }[] }
  /** `shared`: counted over all the events they are bought for. */
  | { of: 'packs'; ingredient: Ingredient; shared: boolean }
  /** Whole pieces of a line, or what goes in once for each batch begun. */
  | { of: 'pieces' | 'lots'; name: string; recipe: Recipe }
  /** Nothing steps: one of a group comes who eats more than most. */
  | { of: 'guest'; group: Group };

/** How many there are of something at one head-count, and what they cost, exact, when that is asked. */
export type Stepped = { what: What; count: number; cost: () => Rational };

/** What steps up with one guest more, and what that costs in minor units, exact. */
export type Jump = { what: What; from: number; to: number; more: Rational };

/** Batches begun of a recipe. */
type Begun = { recipe: Recipe; begun: number };

/** All that comes in whole ones at one head-count, always in the same order. */
export type Steps = { guests: number; stepped: readonly Stepped[]; begun: readonly Begun[] };

/**
 * What steps up from one head-count to the next so that it costs each guest more, the dearest first; what grows with
 * every guest alike is none of it.
 */
export const jumpsBetween = (before: Steps, after: Steps): Jump[] => {
  const jumps: Jump[] = [];
  for (const [i, { what, count, cost }] of after.stepped.entries()) {
    const was = before.stepped[i]!;
    if (count === was.count) continue;
    const earlier = was.cost();
    const more = cost().minus(earlier);
    if (more.times(Rational.of(before.guests)).compare(earlier) <= 0) continue;
    const named = what.of === 'work' ? { ...what, batches: moreBegun(before, after) } : what;
    jumps.push({ what: named, from: was.count, to: count, more });
  }
  return jumps.sort((a, b) => b.more.compare(a.more));
};

const moreBegun = (before: Steps, after: Steps): { recipe: Recipe; to: number }[] =>
  after.begun
    .filter(({ begun }, i) => begun > before.begun[i]!.begun)
    .map(({ recipe, begun }) => ({ recipe, to: begun }));
