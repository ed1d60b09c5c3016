import { cupOf } from '../../core/batch.js';
import type { Facts } from '../../core/facts/facts.js';
import type { Recipe } from '../../core/facts/recipe.js';
import { orByWeight, type Shown, showEnds, showQuantity } from '../../core/quantity/show.js';
import { type Quantity, quantity } from '../../core/quantity/units.js';
import type { LineNeed } from '../../core/scaling.js';
import { statesBought } from '../../core/weighing.js';
import { atThePot } from '../wary.js';

/** One thing to weigh out: `amount` is undefined where it can't be worked out, and for what goes in to taste. */
export type WeighLine = {
  name: string;
  /** What is said after the name. */
  preparation: string;
  amount: Shown | undefined;
  toTaste: boolean;
  /** True for a weight or volume as it is bought, before trimming. */
  asBought: boolean;
  /** What it comes to as purchased, where trimming makes that another amount. */
  from: Shown | undefined;
};

/** The lines of a recipe's first step as a cook weighs them out. */
export const weighLines = (lines: readonly LineNeed[], recipe: Recipe, facts: Facts): WeighLine[] => {
  const { kitchen } = facts;
  const cup = cupOf(recipe, facts);
  return lines.map((need) => {
    const { line, amount, least, unit, prepared, bought, ingredient, component } = need;
    const asked = amount && quantity(amount, unit, cup);
    const measured = asked?.base === 'g' || asked?.base === 'ml';
    const asBought = measured && ingredient !== undefined && statesBought(line, asked.base);
    return {
      name: (ingredient ?? component)!.name,
      preparation: saidAfter(need),
      amount:
        amount && orByWeight(showEnds(least, amount, unit, cup, kitchen, 'prep'), prepared, kitchen, 'prep'),
      toTaste: line.amount === null,
      asBought,
      from:
        measured && !asBought && bought && !same(asked, bought)
          ? showQuantity(bought, kitchen, 'prep')
          : undefined,
    };
  });
};

/** Its cut or state, that the amount is a cooked weight, and what to be wary of where it is scaled far. */
const saidAfter = ({ line, wary }: LineNeed): string =>
  [line.preparation, line.stated === 'cooked' && `once ${line.cooked}`, wary && atThePot[wary]]
    .filter((one) => typeof one === 'string' && one !== '')
    .join(', ');

const same = (a: Quantity, b: Quantity): boolean => a.base !== b.base || a.value.equals(b.value);
