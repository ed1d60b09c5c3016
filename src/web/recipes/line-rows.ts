import { cupOf } from '../../core/batch.js';
import type { Kitchen } from '../../core/facts/kitchen.js';
import { exact } from '../../core/quantity/amount.js';
import { Rational } from '../../core/quantity/rational.js';
import {
  inWords,
  orByWeight,
  plural,
  type Shown,
  showAmount,
  showQuantity,
} from '../../core/quantity/show.js';
import { baseOf } from '../../core/quantity/units.js';
import type { LineNeed } from '../../core/scaling.js';
import type { ScaledLine, ScaledRecipe } from '../../core/sheets/scaled-recipe.js';
import { statesBought } from '../../core/weighing.js';
import { type Format, formatFor } from '../format.js';
import { type Html, html, nothing } from '../html.js';
import { pageOf } from '../links.js';

export type LineRow = {
  key: string;
  amount: Html;
  /** The unrounded figure. */
  exactly: string;
  base: Html;
  name: string;
  href: string;
  component: boolean;
  preparation: string;
  bought: Html;
  allergens: Html;
  cost: Html;
};

/** The lines of a scaled recipe, each beside its base. */
export const lineRows = (scaled: ScaledRecipe): LineRow[] => {
  const { facts, lines } = scaled;
  const cup = cupOf(scaled.recipe, facts);
  const f = formatFor(facts.kitchen);
  return lines.map((line) => {
    const { need } = line;
    const { unit, key, preparation } = need.line;
    const item = (need.ingredient ?? need.component)!;
    const shown = (amount: Rational | undefined) => amount && showAmount(amount, unit, cup, facts.kitchen);
    return {
      key,
      amount:
        need.line.amount === null
          ? html`<span class="thin">to taste</span>`
          : figure(need.amount && orByWeight(shown(need.amount)!, need.prepared, facts.kitchen), f),
      exactly: need.amount ? `exactly ${need.amount.toString()} ${unit}` : '',
      base: need.base ? lighter(shown(need.base)!) : nothing,
      name: item.name,
      href: need.component ? pageOf('recipe', item.key) : pageOf('ingredient', item.key),
      component: need.component !== undefined,
      preparation,
      bought: boughtInWords(need, facts.kitchen, f),
      allergens: allergensInWords(line.allergens, f),
      cost: lineCost(line, scaled, f),
    };
  });
};

const figure = (shown: Shown | undefined, f: Format): Html =>
  shown ? f.measure(shown) : html`<b class="loud">not known</b>`;

/** A measure without the weight of the figure to act on. */
export const lighter = ({ figure, fraction, unit, and = [] }: Shown): Html => {
  const part = fraction && html`<span class="fr">${fraction}</span>`;
  return html`${figure}${figure && part && ' '}${part}${unit !== 'each' && ` ${plural(unit, figure, fraction)}`}${and.map((part) => html`, ${lighter(part)}`)}`;
};

const boughtInWords = (need: LineNeed, kitchen: Kitchen, f: Format): Html => {
  const { ingredient, line, batches, bought, prepared } = need;
  if (line.amount === null) return nothing;
  if (!ingredient)
    return batches ? html`${batches.toFixed(2)} of a batch` : html`<b class="loud">not known</b>`;
  if (ingredient.notBought) return html`not bought`;
  if (!bought) return html`<b class="loud">yield not known</b>`;
  const base = baseOf(line.unit);
  if (base !== 'g' && base !== 'ml') return html`${line.scales === 'pieces' ? 'whole pieces' : 'as counted'}`;
  const share = exact(ingredient.edibleYield?.yield ?? '0');
  if (share.isZero) return html`as bought`;
  const at = html`<span class="thin">at ${percentOf(share, f)}</span>`;
  if (statesBought(line, base))
    return prepared && share.n !== share.d
      ? html`as bought, ${inWords(showQuantity({ value: prepared, base: 'g' }, kitchen))} ${at}`
      : html`as bought`;
  if (share.n === share.d) return html`as ${base === 'g' ? 'weighed' : 'measured'}`;
  return html`${inWords(showQuantity(bought, kitchen))} ${at}`;
};

const percentOf = (share: Rational, f: Format): string => {
  const percent = share.times(Rational.of(100));
  return f.percent(percent, percent.isWhole ? 0 : 1);
};

const mostNamed = 2;

/** "gluten, may: mustard, nuts not known" */
const allergensInWords = (allergens: ScaledLine['allergens'], f: Format): Html => {
  const of = (wanted: string) => allergens.filter(({ state }) => state === wanted).map(({ item }) => item);
  const [contains, may, unknown] = [of('contains'), of('may'), of('unknown')];
  const open = unknown.length > mostNamed ? f.number(unknown.length) : unknown.join(', ');
  const parts = [
    contains.length > 0 && html`<b>${contains.join(', ')}</b>`,
    may.length > 0 && html`may: ${may.join(', ')}`,
    unknown.length > 0 && html`<b class="loud">${open} not known</b>`,
  ].filter((part) => part !== false);
  return html`${parts.map((part, i) => html`${i > 0 && '; '}${part}`)}`;
};

const lineCost = ({ need, cost }: ScaledLine, { components }: ScaledRecipe, f: Format): Html => {
  const inPart = need.component && !components.find((one) => one.need.recipe === need.component)?.complete;
  if (cost === undefined) return need.line.amount === null ? nothing : html`<b class="loud">not known</b>`;
  if (!inPart) return html`${f.money(cost)}`;
  return cost === 0 ? html`<b class="loud">not known</b>` : html`${f.money(cost)} <b class="loud">so far</b>`;
};
