import type { Dish, Event } from '../../core/facts/event.js';
import { type Facts, factsOf } from '../../core/facts/facts.js';
import type { Ingredient } from '../../core/facts/ingredient.js';
import type { Rational } from '../../core/quantity/rational.js';
import { showQuantity } from '../../core/quantity/show.js';
import { portionsOf } from '../../core/requirements.js';
import { costing } from '../../core/sheets/costing.js';
import { wholeCost } from '../../core/whole-cost/cost-of-party.js';
import { costShown } from '../events/dishes.js';
import { type Form, rows, text } from '../form.js';
import { type Format, formatFor } from '../format.js';
import { type Html, html } from '../html.js';
import { typedAmount, typedMeasure } from '../typed.js';

/** What is asked about, each with what was planned of it. */
export type Asked = {
  groups: { key: string; name: string; planned: string }[];
  dishes: { key: string; name: string; planned: Html; made: Rational }[];
  lines: { key: string; name: string; planned: string; byTheHour: boolean }[];
  ingredients: { key: string; name: string; planned: Html }[];
};

/** What a party's form asks, line by line: its groups, dishes, costs beside food, and what its recipes need. */
export const askedOf = (event: Event, today: Facts): Asked => {
  const facts = factsOf(event, today);
  const f = formatFor(facts.kitchen);
  const { parts } = wholeCost(event, today, 'used');
  return {
    groups: event.groups.map(({ key, name, guests }) => ({ key, name, planned: f.number(guests) })),
    dishes: dishesOf(event).flatMap((dish) => dishRow(dish, event, facts, f)),
    lines: parts.map(({ line, cost, complete, hours }) => ({
      key: line.key,
      name: line.name,
      planned: [hours && `${shortHours(hours.toFixed(1))} h`, costShown(cost, complete, f)]
        .filter(Boolean)
        .join(', '),
      byTheHour: 'rate' in line.by,
    })),
    ingredients: costing(event, today)
      .value.ingredients.filter(({ ingredient }) => !ingredient.notBought)
      .map(({ ingredient: { key, name }, bought }) => ({
        key,
        name,
        planned: bought
          ? f.measure(showQuantity(bought, facts.kitchen))
          : html`<span class="loud">not known</span>`,
      })),
  };
};

/** "12.50" as "12.5", "4.00" as "4". */
export const shortHours = (fixed: string): string => fixed.replace(/\.?0+$/, '');

const dishesOf = ({ courses }: Event): Dish[] => courses.flatMap(({ dishes }) => dishes);

const dishRow = (dish: Dish, event: Event, facts: Facts, f: Format): Asked['dishes'] => {
  const recipe = facts.recipes.get(dish.recipe);
  if (!recipe) return [];
  const made = portionsOf(dish, recipe, event);
  const planned = f.measure(showQuantity({ value: made, base: 'each' }, facts.kitchen));
  return [{ key: dish.key, name: recipe.name, planned, made }];
};

/** What is noted, as the form shows it; `names` of ingredients that the recipes do not need. */
export const afterwardsForm = (
  { afterwards }: Event,
  revision: number,
  asked: Asked,
  names: ReadonlyMap<string, string>,
  f: Format,
): Form => {
  const money = (paid: number | null | undefined) => (typeof paid === 'number' ? f.plainMoney(paid) : '');
  const there = new Set(asked.ingredients.map(({ key }) => key));
  const extra = (afterwards?.bought ?? []).filter(({ ingredient }) => !there.has(ingredient));
  return {
    revision: String(revision),
    came: asked.groups.map(({ key }) => {
      const noted = afterwards?.came.find(({ group }) => group === key);
      return { key, guests: noted ? String(noted.guests) : '' };
    }),
    left: asked.dishes.map(({ key }) => {
      const noted = afterwards?.left.find(({ dish }) => dish === key);
      return { key, portions: typedAmount(noted?.portions ?? null) };
    }),
    spent: asked.lines.map(({ key }) => {
      const noted = afterwards?.spent.find(({ line }) => line === key);
      return { key, hours: typedAmount(noted?.hours ?? null), paid: money(noted?.paid) };
    }),
    bought: asked.ingredients.map(({ key }) => {
      const noted = afterwards?.bought.find(({ ingredient }) => ingredient === key);
      return { key, amount: typedMeasure(noted?.amount ?? null), paid: money(noted?.paid) };
    }),
    also: [
      ...extra.map(({ ingredient, amount, paid }) => ({
        name: names.get(ingredient) ?? ingredient,
        amount: typedMeasure(amount),
        paid: money(paid),
      })),
      {},
    ],
    note: afterwards?.note ?? '',
  };
};

/** The names of the rows of a list as the form was drawn with, so that what is no longer asked about stays. */
export const keysIn = (form: Form, list: string): Set<string> =>
  new Set(rows(form, list).map((row) => text(row, 'key')));

export type Named = Pick<Ingredient, 'key' | 'name'>;
