import type { Recipe } from './facts/recipe.js';
import { differing } from './kitchen-costs/figures.js';
import { figureOf, type KitchenCosts, type RecipeFigure } from './kitchen-costs.js';
import { recipeOf } from './lookup.js';

/** A recipe whose cost isn't what it was. */
export type CostMoved = { recipe: Recipe; before: RecipeFigure; after: RecipeFigure };

/**
 * The recipes whose cost of a batch or portion moves between two states of a kitchen, or becomes known or not known, in
 * whole minor units as they are shown; those first whose portion (kilo, litre) moves most. Recipes that only one of the
 * two has are left out.
 */
export const costsMoved = (before: KitchenCosts, after: KitchenCosts): CostMoved[] => {
  const moved: CostMoved[] = [];
  for (const key of touched(before, after)) {
    const [was, is] = [figureOf(before, key), figureOf(after, key)];
    if (was && is && differs(was, is))
      moved.push({ recipe: recipeOf(key, after.facts), before: was, after: is });
  }
  return moved.sort((a, b) => by(b) - by(a) || (a.recipe.key < b.recipe.key ? -1 : 1));
};

/** The recipes whose cost turns on what differs; all of them where more than prices does. */
const touched = (before: KitchenCosts, after: KitchenCosts): Iterable<string> => {
  if (before.figures.sums !== after.figures.sums) return after.places.keys();
  return differing(before.figures, after.figures).flatMap((at) => after.recipeAt[at] ?? []);
};

/** What is known of a cost that isn't known before nor after may well move, but nobody has seen it as a cost. */
const differs = (was: RecipeFigure, is: RecipeFigure): boolean =>
  was.complete !== is.complete ||
  (is.complete &&
    (was.batch !== is.batch || was.each !== is.each || was.unit !== is.unit || was.guess !== is.guess));

/** By how much a portion moves, or a batch where it has no portions. */
const by = ({ before, after }: CostMoved): number =>
  Math.abs((after.each ?? after.batch) - (before.each ?? before.batch));
