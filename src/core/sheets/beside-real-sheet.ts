import type { PlannedBesideReal } from '../afterwards.js';
import type { Event } from '../facts/event.js';
import type { Kitchen } from '../facts/kitchen.js';
import type { MoneyBeside } from '../money-beside.js';
import type { CostView } from '../whole-cost/whole-cost.js';
import { decimalMoney, type Sheet } from './sheet.js';

/** A party as it was planned beside what it really came to, as tables; what is not known is empty. */
export const besideRealSheet = (
  event: Event,
  found: PlannedBesideReal,
  view: CostView,
  { currency }: Pick<Kitchen, 'currency'>,
): Sheet => ({
  sheet: 'beside-real',
  title: `Planned beside real, ${event.name}`,
  about: {
    event: event.key,
    date: event.date,
    view,
    guestsPlanned: String(found.planned),
    guestsCame: found.came === undefined ? '' : String(found.came),
    currency,
    note: event.afterwards?.note ?? '',
  },
  get tables() {
    const money = (beside: MoneyBeside) => ({
      planned: beside.plannedKnown ? decimalMoney(beside.planned, currency) : '',
      real: beside.realKnown ? decimalMoney(beside.real, currency) : '',
      more: beside.more === undefined ? '' : decimalMoney(beside.more, currency),
      percent: beside.percent?.toFixed(1) ?? '',
    });
    const moneyColumns = [
      { key: 'planned', label: 'Planned', unit: currency },
      { key: 'real', label: 'Really', unit: currency },
      { key: 'more', label: 'More', unit: currency },
      { key: 'percent', label: 'More in per cent', unit: '%' },
    ];
    return [
      {
        name: 'lines',
        title: 'By line',
        columns: [
          { key: 'line', label: 'Line' },
          ...moneyColumns,
          { key: 'hoursPlanned', label: 'Hours planned', unit: 'h' },
          { key: 'hours', label: 'Hours worked', unit: 'h' },
        ],
        rows: [
          { line: 'Food', ...money(found.food) },
          ...found.lines.map(({ line, cost, hours }) => ({
            line: line.name,
            ...money(cost),
            hoursPlanned: hours.planned?.toString() ?? '',
            hours: hours.real?.toString() ?? '',
          })),
          { line: 'All', ...money(found.total) },
        ],
      },
      {
        name: 'dishes',
        title: 'What was eaten',
        columns: [
          { key: 'dish', label: 'Dish' },
          { key: 'made', label: 'Made', unit: 'portions' },
          { key: 'left', label: 'Left', unit: 'portions' },
          { key: 'eaten', label: 'Eaten', unit: 'portions' },
          { key: 'aGuest', label: 'A guest who came', unit: 'portions' },
        ],
        rows: found.dishes.map(({ recipe, made, left, eaten, aGuest }) => ({
          dish: recipe.name,
          made: made.toString(),
          left: left?.toString() ?? '',
          eaten: eaten?.toString() ?? '',
          aGuest: aGuest?.toString() ?? '',
        })),
      },
      {
        name: 'bought',
        title: 'What was bought',
        columns: [
          { key: 'ingredient', label: 'Ingredient' },
          { key: 'amountPlanned', label: 'As purchased, planned' },
          { key: 'unitPlanned', label: 'Unit planned' },
          { key: 'amount', label: 'Bought' },
          { key: 'unit', label: 'Unit' },
          ...moneyColumns,
        ],
        rows: found.ingredients.map(({ name, planned, bought, cost }) => ({
          ingredient: name,
          amountPlanned: planned?.value.toString() ?? '',
          unitPlanned: planned?.base ?? '',
          amount: bought?.amount ?? '',
          unit: bought?.unit ?? '',
          ...money(cost),
        })),
      },
    ];
  },
  problems: [],
  foot: [besideWords[view], notNoted],
});

export const besideWords: Record<CostView, string> = {
  used: 'Planned food: what the recipes use, at the pack’s unit price.',
  bought: 'Planned food: whole packs for this party alone.',
};

const notNoted = 'What was not noted is not known; a difference is said only where both are known.';
