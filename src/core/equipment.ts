import { makes } from './batch.js';
import type { Facts } from './facts/facts.js';
import type { Place } from './facts/place.js';
import type { Recipe, Step } from './facts/recipe.js';
import { noPans, noTin, otherDepth, overflows } from './how-much-problems.js';
import { loadsFor, type PanNeed, pansFor, type ShelfNeed } from './pans.js';
import { traysFor } from './prep.js';
import type { Answer, Problem } from './problem.js';
import { Rational } from './quantity/rational.js';
import type { Asked } from './scale-to.js';
import { type Filled, filled, type TinsNeeded, tinsFor } from './tins.js';

/** What one step asks for: pans, and oven shelves in so many loads. */
export type StepEquipment = {
  number: number;
  step: Step;
  trays: number | undefined;
  pans: PanNeed | undefined;
  /** true where pans are known but not how many litres a step on the hob fills, for more than one batch. */
  litresOpen: boolean;
  shelves: ShelfNeed | undefined;
};

/** The recipe's own tins, or how others come out; pans and shelves step by step. */
export type Equipment = {
  tins: TinsNeeded | undefined;
  into: Filled | undefined;
  steps: StepEquipment[];
};

/**
 * The tins, pans and oven shelves that so many batches need, by what the home kitchen and, for steps done there, the
 * venue have; whole ones, rounded up. A venue not named says nothing of its pans and ovens.
 */
export const equipmentFor = (
  recipe: Recipe,
  factor: Rational | undefined,
  asked: Asked | undefined,
  facts: Facts,
  venue?: Place,
): Answer<Equipment> => {
  const home = [...facts.places.values()].find(({ kind }) => kind === 'home');
  const made = makes(recipe, facts).portions;
  const steps = recipe.steps.map((step, at): StepEquipment => {
    const place = step.where === 'venue' ? venue : home;
    const trays = factor && made && traysFor(step, made.times(factor));
    return {
      number: at + 1,
      step,
      trays,
      pans: factor && pansFor(step, factor, place),
      litresOpen: step.rings > 0 && step.pan === null && isMore(factor) && (place?.pans.length ?? 0) > 0,
      shelves: trays !== undefined && place ? loadsFor(step, trays, place) : undefined,
    };
  });
  const { tin } = recipe;
  const other = asked && ('tin' in asked ? asked.tin : asked.into);
  const into = tin && other && factor && !factor.isZero ? filled(tin, factor, other) : undefined;
  const tins = tin && !other && factor && !factor.isZero ? tinsFor(tin, factor) : undefined;
  return {
    value: { tins, into, steps },
    problems: [
      ...(other && !tin && !(asked && 'tin' in asked) ? [noTin(recipe)] : []),
      ...(into ? tinProblems(recipe, into) : []),
      ...panProblems(recipe, steps),
    ],
  };
};

const isMore = (factor: Rational | undefined): boolean =>
  factor !== undefined && factor.compare(Rational.one) > 0;

const tinProblems = (recipe: Recipe, into: Filled): Problem[] => [
  ...(into.deeper.toFixed(2) === '1.00' ? [] : [otherDepth(recipe, into)]),
  ...(into.over ? [overflows(recipe, into, into.over)] : []),
];

const panProblems = (recipe: Recipe, steps: readonly StepEquipment[]): Problem[] => {
  const without = steps.flatMap(({ pans }) => (pans?.place && pans.goes === 0n ? [pans.place] : []));
  return [...new Set(without)].map((place) => noPans(place, recipe));
};
