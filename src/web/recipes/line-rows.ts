import { cupOf } from '../../core/batch.js';
import type { Kitchen } from '../../core/facts/kitchen.js';
import { exact } from '../../core/quantity/amount.js';
import { Rational } from '../../core/quantity/rational.js';
import {
  inWords,
  orByWeight,
  plural,
  type Rounding,
  type Shown,
  showEnds,
  showQuantity,
} from '../../core/quantity/show.js';
import { inOneUnit } from '../../core/quantity/shown.js';
import { baseOf } from '../../core/quantity/units.js';
import type { LineNeed } from '../../core/scaling.js';
import type { ScaledLine, ScaledRecipe } from '../../core/sheets/scaled-recipe.js';
import { statesBought } from '../../core/weighing.js';
import { bare, type Format, formatFor } from '../format.js';
import { type Html, html, nothing } from '../html.js';
import { pageOf } from '../links.js';
import { type LineNotes, lineNotes } from './line-notes.js';

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
  notes: LineNotes;
  bought: Html;
  allergens: Html;
  cost: Html;
};

/** The lines of a scaled recipe, each beside its base. */
export const lineRows = (scaled: ScaledRecipe): LineRow[] => {
  const { facts, lines } = scaled;
  const cup = cupOf(scaled.recipe, facts);
  const f = formatFor(facts.kitchen);
  const asMade = scaled.factor?.equals(Rational.one) ? 'stated' : 'recipe';
  return lines.map((line) => {
    const { need } = line;
    const { key, preparation } = need.line;
    const item = (need.ingredient ?? need.component)!;
    const shown = (amount: Rational, least?: Rational, rounding: Rounding = 'recipe') =>
      showEnds(least, amount, need.unit, cup, facts.kitchen, rounding);
    const amount =
      need.amount && orByWeight(shown(need.amount, need.least, asMade), need.prepared, facts.kitchen);
    return {
      key,
      amount: need.line.amount === null ? html`<span class="thin">to taste</span>` : figure(amount, f),
      exactly: exactly(need),
      base: need.base ? lighter(shown(need.base, need.baseLeast, 'stated')) : nothing,
      name: item.name,
      href: need.component ? pageOf('recipe', item.key) : pageOf('ingredient', item.key),
      component: need.component !== undefined,
      preparation,
      notes: lineNotes(line, shown),
      bought: boughtInWords(need, facts.kitchen, f),
      allergens: allergensInWords(line.allergens, f),
      cost: lineCost(line, scaled, f),
    };
  });
};

const exactly = ({ amount, least, unit }: LineNeed): string => {
  if (!amount) return '';
  return `exactly ${least ? `${least.toString()} to ` : ''}${amount.toString()} ${unit}`;
};

const figure = (shown: Shown | undefined, f: Format): Html =>
  shown ? f.measure(shown) : html`<b class="loud">not known</b>`;

/** A measure without the weight of the figure to act on. */
export const lighter = ({ from, ...shown }: Shown): Html => {
  const { figure, fraction, unit, and = [] } = shown;
  if (from && !inOneUnit(from, shown)) return html`${lighter(from)} to ${lighter(shown)}`;
  return html`${from && html`${bare(from)}–`}${bare(shown)}${unit !== 'each' && ` ${plural(unit, figure, fraction)}`}${and.map((part) => html`, ${lighter(part)}`)}`;
};

const boughtInWords = (need: LineNeed, kitchen: Kitchen, f: Format): Html => {
  const { ingredient, line, batches, bought, prepared } = need;
  if (line.amount === null) return nothing;
  if (!ingredient)
    return batches ? html`${batches.toFixed(2)} of a batch` : html`<b class="loud">not known</b>`;
  if (ingredient.notBought) return html`not bought`;
  if (!bought) return html`<b class="loud">${amountOpen(need)} not known</b>`;
  if (line.stated === 'cooked')
    return html`${inWords(showQuantity(bought, kitchen))} <span class="thin">before it is ${line.cooked}</span>`;
  const base = baseOf(need.unit);
  if (base !== 'g' && base !== 'ml')
    return line.scales === 'pieces' ? html`whole pieces` : html`as counted${partInGrams(need, kitchen)}`;
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

/** What part of a piece weighs, for 0.4 of an egg is 20 g beaten and no eighths of one. */
const partInGrams = ({ amount, prepared }: LineNeed, kitchen: Kitchen): string =>
  amount && !amount.isWhole && prepared
    ? `, ${inWords(showQuantity({ value: prepared, base: 'g' }, kitchen))}`
    : '';

const amountOpen = ({ amount, line }: LineNeed): string => {
  if (!amount) return 'amount';
  return line.stated === 'cooked' ? 'cooked yield' : 'yield';
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
