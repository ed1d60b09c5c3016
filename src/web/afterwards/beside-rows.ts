import type { PlannedBesideReal } from '../../core/afterwards.js';
import type { Kitchen } from '../../core/facts/kitchen.js';
import type { Rational } from '../../core/quantity/rational.js';
import { showQuantity } from '../../core/quantity/show.js';
import { formatFor } from '../format.js';
import { type Html, html } from '../html.js';
import { pageOf } from '../links.js';
import { measureInWords } from '../typed.js';
import { moneyRow } from './money-row.js';

/** What of each dish was made, left and eaten, as its row shows it. */
export const dishesEatenRows = ({ dishes }: PlannedBesideReal, kitchen: Kitchen) => {
  const f = formatFor(kitchen);
  const portions = (value: Rational | undefined): Html =>
    value
      ? f.measure(showQuantity({ value, base: 'each' }, kitchen))
      : html`<span class="loud">not known</span>`;
  return dishes.map(({ recipe, made, left, eaten, aGuest }) => ({
    name: recipe.name,
    href: pageOf('recipe', recipe.key),
    made: portions(made),
    left: portions(left),
    eaten: portions(eaten),
    aGuest: aGuest ? aGuest.toFixed(2) : '',
  }));
};

/** What of each ingredient was planned and bought, and what that cost, as its row shows it. */
export const ingredientsBesideRows = (
  { ingredients }: PlannedBesideReal,
  kitchen: Kitchen,
  names: ReadonlyMap<string, string>,
) => {
  const f = formatFor(kitchen);
  return ingredients.map(({ key, name, planned, bought, cost }) => ({
    name,
    // One that was taken out since has no page.
    href: names.has(key) ? pageOf('ingredient', key) : '',
    amount: planned
      ? f.measure(showQuantity(planned, kitchen))
      : html`<span class="second">not planned</span>`,
    bought: bought ? `${measureInWords(bought)} bought` : '',
    ...moneyRow(cost, f),
  }));
};
