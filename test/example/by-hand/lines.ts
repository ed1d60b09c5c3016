import Fraction from 'fraction.js';
import type { Line, Recipe } from '../../../src/core/facts/recipe.js';
import { total } from './tree.js';
import { perGram } from './units.js';

/** How many times its base a line is: the spice rule of the Canadian Spice Association, or once a batch begun. */
const times = ({ scales }: Line, batches: Fraction): Fraction => {
  if (scales === 'batch') return batches.ceil();
  const beyond = batches.sub(2);
  if (beyond.compare(0) <= 0) return batches;
  if (scales === 'herb') return beyond.div(2).add(2);
  return scales === 'chilli' ? beyond.div(4).add(2) : batches;
};

/** The upper end of a range, else the one figure. */
const most = ({ amount, amountTo }: Line) => new Fraction(amountTo ?? amount!);

/** What a line takes for so many batches, with its unit; a per cent is of the flour lines, which are weights. */
export const taken = (line: Line, recipe: Recipe, batches: Fraction): { amount: Fraction; unit: string } => {
  const amount = most(line).mul(times(line, batches));
  if (line.scales === 'pieces') return { amount: amount.ceil(), unit: line.unit };
  if (line.unit !== 'percent') return { amount, unit: line.unit };
  const flour = recipe.lines.filter(({ scales }) => scales === 'flour');
  const grams = total(flour.map((one) => most(one).mul(perGram[one.unit]!)));
  return { amount: amount.mul(grams).div(100), unit: 'g' };
};
