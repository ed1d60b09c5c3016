import { listOf } from '../../core/allergens.js';
import type { Ingredient } from '../../core/facts/ingredient.js';
import type { Kitchen } from '../../core/facts/kitchen.js';
import { labelState } from '../../core/label.js';
import { exact } from '../../core/quantity/amount.js';
import { Rational } from '../../core/quantity/rational.js';
import { unitPrice } from '../../core/unit-price.js';
import { preferredPack } from '../../core/weighing.js';
import { type Format, formatFor } from '../format.js';
import { type Html, html, nothing } from '../html.js';
import { typedUnit } from '../typed.js';

/** What a kilo, litre or piece of the pack in use costs: "£6.76 a kg". */
export const unitPriceInWords = (ingredient: Ingredient, kitchen: Kitchen): Html => {
  if (ingredient.notBought) return html`<span class="thin">not bought</span>`;
  const pack = preferredPack(ingredient);
  const price = pack && unitPrice(pack, kitchen);
  if (!price) return html`<b class="loud">no price</b>`;
  const each = price.unit === 'each' ? 'each' : `a ${typedUnit(price.unit)}`;
  return html`<span class="qty"><b>${formatFor(kitchen).money(price.minor)}</b><span class="unit">${each}</span></span>`;
};

/** "88%", or "as weighed" when all of it is eaten. */
export const yieldInWords = ({ edibleYield, notBought }: Ingredient, f: Format): Html => {
  if (!edibleYield) return notBought ? nothing : html`<b class="loud">yield not known</b>`;
  const percent = exact(edibleYield.yield).times(Rational.of(100));
  if (edibleYield.yield === '1') return html`as weighed`;
  return html`${f.percent(percent, percent.isWhole ? 0 : 1)} eaten`;
};

/** "label read 20 Nov", "9 not known", "the cook's word". */
export const labelInWords = (ingredient: Ingredient, kitchen: Kitchen): Html => {
  const f = formatFor(kitchen);
  const list = listOf(kitchen);
  const { unknown, read } = labelState(ingredient, list);
  if (unknown === list.items.length) return html`<b class="loud">label not read</b>`;
  if (unknown > 0) return html`<b class="loud">${f.number(unknown)} not known</b>`;
  return read ? html`label read ${f.dayMonth(read.last)}` : html`the cook’s word`;
};
