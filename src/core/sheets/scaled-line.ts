import { allergensOf, cellsOf } from '../allergens.js';
import type { LineCost } from '../costing.js';
import type { Facts } from '../facts/facts.js';
import { offerFor } from '../offer.js';
import type { Problem } from '../problem.js';
import type { Rational } from '../quantity/rational.js';
import type { LineNeed } from '../scaling.js';

export type ScaledLine = {
  need: LineNeed;
  /** What it would be if it had scaled straight, undefined where it did; and what whole pieces leave over of that. */
  straight: Rational | undefined;
  over: Rational | undefined;
  /** What is missing of it, each with the reference's figure for it in words where there is one. */
  open: { problem: Problem; offer: string }[];
  /** Whole minor units; the lines add up to the total. */
  cost: number | undefined;
  allergens: { item: string; state: 'contains' | 'may' | 'unknown' }[];
};

/** One line of a scaled recipe beside what it costs in minor units, with what it lacks and what it brings in. */
export const scaledLine = (
  { need, cost: exact }: LineCost,
  cost: number,
  factor: Rational | undefined,
  facts: Facts,
): ScaledLine => ({
  need,
  ...straightOf(need, factor),
  open: openOn(need),
  cost: exact && cost,
  allergens: lineAllergens(need, facts),
});

const straightOf = (
  { base, amount, line }: LineNeed,
  factor: Rational | undefined,
): Pick<ScaledLine, 'straight' | 'over'> => {
  const straight = factor && base?.times(factor);
  if (!straight || !amount || straight.equals(amount)) return { straight: undefined, over: undefined };
  return { straight, over: line.scales === 'pieces' ? amount.minus(straight) : undefined };
};

const openOn = ({ line, problems, missing, ingredient }: LineNeed): ScaledLine['open'] =>
  problems
    .filter(({ code }) => code.startsWith('no-'))
    .map((problem) => {
      const gap = missing.find((one) => problem.code.startsWith(`no-${one.missing}`));
      return { problem, offer: gap ? offerFor(ingredient!, gap, line.cooked) : '' };
    });

const lineAllergens = ({ ingredient, component }: LineNeed, facts: Facts): ScaledLine['allergens'] => {
  const cells = component
    ? allergensOf(component, facts)
    : cellsOf([{ ingredient: ingredient!, through: [] }], facts);
  return cells.flatMap(({ item, state }) =>
    state === 'free' ? [] : [{ item: item.short.toLowerCase(), state }],
  );
};
