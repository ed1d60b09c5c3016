import type { Cell } from '../allergens.js';
import { addDays, clockOf } from '../calendar.js';
import type { Answer } from '../problem.js';
import { aboutCost } from './about-cost.js';
import { isOpen } from './allergen-matrix.js';
import type { EventSummary } from './event-summary.js';
import { dishFoot } from './line-foot.js';
import { cautions, conventions, decimalMoney, type Sheet } from './sheet.js';

/** The event summary as tables. */
export const eventSummarySheet = ({ value, problems }: Answer<EventSummary>): Sheet => {
  const { event, facts, courses, cost, gramsAGuest, unweighed } = value;
  const { currency } = facts.kitchen;
  const rows = courses.flatMap(({ course, servedOn, dishes }) =>
    dishes.map(({ need, cost: dish, allergens, aPortion, gramsAGuest, trays, starts }) => ({
      course: course.name,
      day: servedOn,
      time: course.time,
      dish: need.recipe.name,
      portions: need.portions.toString(),
      portion: need.portion?.value.toString() ?? '',
      unit: need.portion?.base ?? '',
      gramsAGuest: gramsAGuest?.toString() ?? '',
      trays: trays === undefined ? '' : String(trays),
      starts: starts === undefined ? '' : localAt(event.date, starts),
      cost: dish.complete ? decimalMoney(dish.cost, currency) : '',
      costKnown: decimalMoney(dish.cost, currency),
      aPortion: dish.complete && aPortion !== undefined ? decimalMoney(aPortion, currency) : '',
      contains: named(allergens, 'contains'),
      mayContain: named(allergens, 'may'),
      notKnown: allergens
        .filter(isOpen)
        .map((cell) => cell.item.short)
        .join('; '),
    })),
  );
  return {
    sheet: 'event-summary',
    title: event.name,
    about: {
      ...aboutCost(event, cost, currency),
      gramsAGuest: gramsAGuest?.toString() ?? '',
      unweighed: unweighed.map(({ name }) => name).join('; '),
    },
    get tables() {
      return [
        {
          name: 'menu',
          title: 'Menu',
          columns: [
            { key: 'course', label: 'Course' },
            { key: 'day', label: 'Served on' },
            { key: 'time', label: 'Served' },
            { key: 'dish', label: 'Dish' },
            { key: 'portions', label: 'Portions' },
            { key: 'portion', label: 'Each' },
            { key: 'unit', label: 'Unit' },
            { key: 'gramsAGuest', label: 'A guest', unit: 'g' },
            { key: 'trays', label: 'Trays' },
            { key: 'starts', label: 'Starts' },
            { key: 'cost', label: 'Cost', unit: currency },
            { key: 'costKnown', label: 'Cost known so far', unit: currency },
            { key: 'aPortion', label: 'A portion', unit: currency },
            { key: 'contains', label: 'Contains' },
            { key: 'mayContain', label: 'May contain' },
            { key: 'notKnown', label: 'Not known: treat as contains' },
          ],
          rows,
        },
      ];
    },
    problems,
    foot: [
      conventions.portions,
      conventions.pieces,
      conventions.components,
      ...dishFoot(courses.flatMap(({ dishes }) => dishes.map(({ need }) => need))),
      conventions.prices,
      cautions.allergens,
    ],
  };
};

/** Minutes from midnight of a day as a local time, "2026-11-28T17:15". */
const localAt = (date: string, minutes: number): string =>
  `${addDays(date, Math.floor(minutes / 1440))}T${clockOf(minutes)}`;

const named = (cells: Cell[], state: Cell['state']): string =>
  cells
    .filter((cell) => cell.state === state)
    .map((cell) => cell.item.short)
    .join('; ');
