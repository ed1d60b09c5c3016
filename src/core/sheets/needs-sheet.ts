import type { Answer } from '../problem.js';
import { dishFoot } from './line-foot.js';
import type { Needs } from './needs.js';
import { cautions, conventions, decimalMoney, type Sheet } from './sheet.js';

/** What a set of events needs as tables. */
export const needsSheet = ({ value, problems }: Answer<Needs>): Sheet => {
  const { currency } = value.facts.kitchen;
  const money = (minor: number | undefined) => (minor === undefined ? '' : decimalMoney(minor, currency));
  return {
    sheet: 'needs',
    title: 'What these events need',
    about: {
      events: value.events.map(({ event }) => event.key).join('; '),
      cost: value.complete ? money(value.total) : '',
      costKnown: money(value.total),
      currency,
      complete: String(value.complete),
    },
    get tables() {
      return [
        {
          name: 'dishes',
          title: 'Dishes',
          columns: [
            { key: 'event', label: 'Event' },
            { key: 'dish', label: 'Dish' },
            { key: 'portions', label: 'Portions' },
            { key: 'cost', label: 'Cost known', unit: currency },
            { key: 'complete', label: 'Complete' },
            { key: 'contains', label: 'Contains' },
            { key: 'may', label: 'May contain' },
            { key: 'unknown', label: 'Not known: treat as contains' },
          ],
          rows: value.events.flatMap(({ event, dishes }) =>
            dishes.map(({ dish, allergens }) => {
              const named = (wanted: (cell: (typeof allergens)[number]) => boolean) =>
                allergens
                  .filter(wanted)
                  .map(({ item }) => item.short)
                  .join('; ');
              return {
                event: event.name,
                dish: dish.need.recipe.name,
                portions: dish.need.portions.toString(),
                cost: money(dish.cost),
                complete: dish.complete ? 'yes' : 'no',
                contains: named(({ state }) => state === 'contains'),
                may: named(({ state }) => state === 'may'),
                unknown: named(({ state, unknown }) => unknown && state !== 'contains'),
              };
            }),
          ),
        },
        {
          name: 'components',
          title: 'Components',
          columns: [
            { key: 'component', label: 'Component' },
            { key: 'batches', label: 'Batches' },
            { key: 'amount', label: 'Amount' },
            { key: 'unit', label: 'Unit' },
            { key: 'events', label: 'For' },
          ],
          rows: value.components.map(({ recipe, batches, makes, events }) => ({
            component: recipe.name,
            batches: batches?.toString() ?? '',
            amount: makes?.value.toString() ?? '',
            unit: makes?.base ?? '',
            events: events.map(({ name }) => name).join('; '),
          })),
        },
        {
          name: 'ingredients',
          title: 'Ingredients',
          columns: [
            { key: 'ingredient', label: 'Ingredient' },
            { key: 'prepared', label: 'Prepared', unit: 'g' },
            { key: 'bought', label: 'As purchased' },
            { key: 'unit', label: 'Unit' },
            { key: 'cost', label: 'Cost known', unit: currency },
            { key: 'complete', label: 'Complete' },
          ],
          rows: value.ingredients.map(({ ingredient, prepared, bought, cost, complete }) => ({
            ingredient: ingredient.name,
            prepared: prepared?.toString() ?? '',
            bought: bought?.value.toString() ?? '',
            unit: bought?.base ?? '',
            cost: money(cost),
            complete: complete ? 'yes' : 'no',
          })),
        },
      ];
    },
    problems,
    foot: [
      ...Object.values(conventions).slice(0, 5),
      ...dishFoot(value.events.flatMap(({ dishes }) => dishes.map(({ dish }) => dish.need))),
      cautions.allergens,
    ],
  };
};
