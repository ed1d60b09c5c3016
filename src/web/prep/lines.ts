import { cupOf } from '../../core/batch.js';
import type { Facts } from '../../core/facts/facts.js';
import type { Recipe } from '../../core/facts/recipe.js';
import { orByWeight, type Shown, showAmount, showQuantity } from '../../core/quantity/show.js';
import { type Quantity, quantity } from '../../core/quantity/units.js';
import type { LineNeed } from '../../core/scaling.js';
import { statesBought } from '../../core/weighing.js';

/** One thing to weigh out: `amount` is undefined where it can't be worked out, and for what goes in to taste. */
export type WeighLine = {
  name: string;
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
  return lines.map(({ line, amount, prepared, bought, ingredient, component }) => {
    const asked = amount && quantity(amount, line.unit, cup);
    const measured = asked?.base === 'g' || asked?.base === 'ml';
    const asBought = measured && ingredient !== undefined && statesBought(line, asked.base);
    return {
      name: (ingredient ?? component)!.name,
      preparation: line.preparation,
      amount:
        amount && orByWeight(showAmount(amount, line.unit, cup, kitchen, 'prep'), prepared, kitchen, 'prep'),
      toTaste: line.amount === null,
      asBought,
      from:
        measured && !asBought && bought && !same(asked, bought)
          ? showQuantity(bought, kitchen, 'prep')
          : undefined,
    };
  });
};

const same = (a: Quantity, b: Quantity): boolean => a.base !== b.base || a.value.equals(b.value);
