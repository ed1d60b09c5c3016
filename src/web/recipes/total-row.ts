import { showQuantity } from '../../core/quantity/show.js';
import type { Quantity } from '../../core/quantity/units.js';
import type { ScaledRecipe } from '../../core/sheets/scaled-recipe.js';
import { formatFor } from '../format.js';
import { type Html, html, nothing } from '../html.js';
import { lighter } from './line-rows.js';
import { costInWords } from './words.js';

export type TotalRow = {
  made: Html;
  base: Html;
  portions: Html;
  aPortion: string;
  cost: string;
  complete: boolean;
};

/** What all lines come to: how much is made, beside its base, and at what cost. */
export const totalRow = ({
  facts,
  made,
  base,
  portions,
  portion,
  aPortion,
  cost,
  complete,
}: ScaledRecipe) => {
  const { kitchen } = facts;
  const f = formatFor(kitchen);
  const known = complete || cost > 0;
  const many = portions && lighter(showQuantity({ value: portions, base: 'portion' }, kitchen));
  const byPortions = made?.base === 'portion';
  const figures = (quantity: Quantity) =>
    byPortions ? { ...showQuantity(quantity, kitchen), unit: 'each' } : showQuantity(quantity, kitchen);
  return {
    made: made ? f.measure(figures(made)) : html`<b class="loud">not known</b>`,
    base: base ? lighter(figures(base)) : nothing,
    portions:
      byPortions || !many
        ? html`${byPortions ? 'portions' : 'in all'}`
        : html`${many}${portion && html` of ${lighter(showQuantity(portion, kitchen))}`}`,
    aPortion:
      portions && known && aPortion !== undefined
        ? `${f.money(aPortion)} a portion${complete ? '' : ' so far'}`
        : '',
    cost: costInWords(known ? cost : undefined, complete, f),
    complete,
  };
};
