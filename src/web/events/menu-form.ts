import type { Dish, Event } from '../../core/facts/event.js';
import type { Recipe } from '../../core/facts/recipe.js';
import type { Form } from '../form.js';
import type { Format } from '../format.js';
import { typedAmount, typedMeasure } from '../typed.js';
import { servedRow } from './menu-served.js';

type Names = (recipe: string) => string;

/** A menu as its form shows it. */
export const menuForm = ({ courses, groups }: Event, revision: number, names: Names, f: Format): Form => {
  const keys = groups.map(({ key }) => key);
  return {
    revision: String(revision),
    groups: keys,
    courses: courses.map(({ key, name, time, dayAfter, service, dishes }) => ({
      key,
      name,
      time,
      dayAfter: dayAfter ? 'on' : '',
      service,
      dishes: dishes.map((dish) => dishRow(dish, keys, names, f)),
    })),
  };
};

/** A dish as its row shows it: who eats it stands in one box for each group, `part0` for the first. */
export const dishRow = (dish: Dish, groups: readonly string[], names: Names, f: Format): Form => {
  const { key, recipe, portion, eaters, price } = dish;
  return {
    key,
    recipe: names(recipe),
    portion: typedMeasure(portion),
    who: 'everybody' in eaters ? 'everybody' : 'shares' in eaters ? 'shares' : 'counts',
    ...Object.fromEntries(groups.map((group, i) => [`part${i}`, partOf(eaters, group)])),
    price: price === null ? '' : f.plainMoney(price),
    ...servedRow(dish),
  };
};

const partOf = (eaters: Dish['eaters'], group: string): string => {
  if ('shares' in eaters)
    return typedAmount(eaters.shares.find((one) => one.group === group)?.percent ?? null);
  if ('counts' in eaters) return String(eaters.counts.find((one) => one.group === group)?.guests ?? '');
  return '';
};

/** Recipes by the names under which a menu may ask for them. */
export type Named = Pick<Recipe, 'key' | 'name'> & { archived: boolean };
