import type { Measure } from '../../core/facts/common.js';
import { inWords, type Shown, showQuantity } from '../../core/quantity/show.js';
import type { CourseShare } from '../../core/sheets/cost-shares.js';
import type { Costing, IngredientUse } from '../../core/sheets/costing.js';
import { latestPrice, preferredPack } from '../../core/weighing.js';
import { costShown } from '../events/dishes.js';
import { type Format, formatFor } from '../format.js';
import { type Html, html } from '../html.js';
import { pageOf, whereMended } from '../links.js';

export type CostDish = {
  portions: Shown;
  name: string;
  href: string;
  aPortion: string;
  cost: string;
  share: string;
  complete: boolean;
};
export type CostCourse = {
  name: string;
  aGuest: Html;
  dishes: CostDish[];
  cost: string;
  complete: boolean;
  /** In minor units, for drawing. */
  from: number;
  to: number;
};

/** What a guest costs, in the gutter: the figure, and below it in few words that it is not all. */
export const gutterCost = (minor: number | undefined, complete: boolean, f: Format): Html => {
  const [figure = '', ...soFar] = costShown(minor, complete, f).split(/ (?=so far)/);
  return html`<b class="figure">${figure}</b>${soFar.length > 0 && html` <span class="so-far">${soFar}</span>`}`;
};

export const courseRows = (shares: readonly CourseShare[], { facts, event }: Costing): CostCourse[] => {
  const f = formatFor(facts.kitchen);
  return shares.map(({ course, cost, from, aGuest, complete, dishes }) => ({
    name: course.name,
    aGuest: gutterCost(aGuest, complete, f),
    cost: costShown(cost, complete, f),
    complete,
    from,
    to: from + cost,
    dishes: dishes.map(({ dish, aPortion, share }) => ({
      portions: showQuantity({ value: dish.need.portions, base: 'each' }, facts.kitchen),
      name: dish.need.recipe.name,
      href: `${pageOf('recipe', dish.need.recipe.key)}?event=${encodeURIComponent(event.key)}&dish=${encodeURIComponent(dish.need.dish.key)}`,
      aPortion: costShown(aPortion, dish.complete, f),
      cost: costShown(dish.cost, dish.complete, f),
      share: f.percent(share),
      complete: dish.complete,
    })),
  }));
};

export type CostIngredient = {
  bought: Shown | undefined;
  name: string;
  href: string;
  pack: string;
  /** "£14.50 on Mon 2 Nov 2026"; nothing where no price stands. */
  price: string;
  guess: boolean;
  notBought: boolean;
  cost: string;
  complete: boolean;
};

export const ingredientRows = ({
  ingredients,
  facts,
}: Pick<Costing, 'ingredients' | 'facts'>): CostIngredient[] => {
  const { kitchen } = facts;
  const f = formatFor(kitchen);
  return ingredients.map((use) => {
    const { ingredient, bought, complete } = use;
    const pack = preferredPack(ingredient);
    const price = pack && latestPrice(pack);
    return {
      bought: bought && showQuantity(bought, kitchen),
      name: ingredient.name,
      href: whereMended({ entity: 'ingredient', key: ingredient.key, name: ingredient.name, field: 'packs' }),
      pack: pack ? packSize(pack.size) : '',
      price: price ? `${f.money(price.price)}, ${f.dateYear(price.date)}` : '',
      guess: price?.guess === true,
      notBought: ingredient.notBought,
      cost: costOfUse(use, f),
      complete,
    };
  });
};

/** A pack as it is sold, in the unit it was entered in: "25 kg", "12 tins". */
const packSize = ({ amount, unit }: Measure): string =>
  unit === 'each'
    ? `${amount} ${amount === '1' ? 'piece' : 'pieces'}`
    : inWords({ figure: amount, unit: unit === 'l' ? 'L' : unit });

/** What isn't bought costs nothing, truly; what has no price is not known. */
const costOfUse = ({ cost, complete }: IngredientUse, f: Format): string =>
  cost === undefined ? 'not known' : complete ? f.money(cost) : `${f.money(cost)} so far`;
