import type { Kitchen } from '../facts/kitchen.js';
import type { Engineering, NotSold } from '../menu-engineering.js';
import { toMinor } from '../money.js';
import { decimalMoney, type Sheet } from './sheet.js';

/** Why a dish is not judged. */
export const apartWords: Record<NotSold['why'], string> = {
  'no-price': 'no price of its own',
  'no-cost': 'its cost is not known',
  'nothing-eaten': 'nothing of it was eaten',
};

/** Menu engineering as tables: each dish with its margin, its part of all portions, and its class. */
export const menuEngineeringSheet = (
  { dishes, meanMargin, popularFrom, portions }: Engineering,
  apart: readonly NotSold[],
  { currency }: Pick<Kitchen, 'currency'>,
): Sheet => ({
  sheet: 'menu-engineering',
  title: 'Menu engineering',
  about: {
    portions: portions.toString(),
    meanMargin: meanMargin ? decimalMoney(toMinor(meanMargin), currency) : '',
    popularFrom: popularFrom?.toFixed(1) ?? '',
    currency,
  },
  get tables() {
    return [
      {
        name: 'dishes',
        title: 'Dishes',
        columns: [
          { key: 'dish', label: 'Dish' },
          { key: 'portions', label: 'Portions sold' },
          { key: 'mix', label: 'Of all portions', unit: '%' },
          { key: 'price', label: 'Price a portion', unit: currency },
          { key: 'margin', label: 'Margin a portion', unit: currency },
          { key: 'all', label: 'Margin of all', unit: currency },
          { key: 'class', label: 'Class' },
        ],
        rows: dishes.map((dish) => ({
          dish: dish.name,
          portions: dish.portions.toString(),
          mix: dish.mix.toFixed(1),
          price: decimalMoney(toMinor(dish.price), currency),
          margin: decimalMoney(toMinor(dish.margin), currency),
          all: decimalMoney(toMinor(dish.income.minus(dish.cost)), currency),
          class: dish.class,
        })),
      },
      {
        name: 'apart',
        title: 'Not in it',
        columns: [
          { key: 'dish', label: 'Dish' },
          { key: 'why', label: 'Why' },
        ],
        rows: apart.map(({ name, why }) => ({ dish: name, why: apartWords[why] })),
      },
    ];
  },
  problems: [],
  foot: [rule, counted],
});

const rule =
  'After M. L. Kasavana and D. I. Smith, Menu Engineering, 1982: a margin is high above the mean margin of all portions sold; a dish is popular above 70 % of an even share of them. A margin is the price of a portion less its food as used.';
const counted =
  'Sold is what was eaten where that was noted, else what was made. Dishes of different courses are judged together.';
