import { afterwards } from '../../../src/core/facts/afterwards.js';
import { costLine } from '../../../src/core/facts/cost-line.js';
import type { Event } from '../../../src/core/facts/event.js';
import type { Workbook } from '../../../src/core/facts/facts.js';
import { exampleKitchen } from '../../world.js';

const serving = { key: 'serving', name: 'Serving', kind: 'hands', by: { rate: 1300, hours: '4', people: 3 } };
const hall = { key: 'hall', name: 'Hall', kind: 'venue', by: { fixed: 8000 } };

/** Invented: the example's birthday tea as it was held before, on a day of its own, with what is noted of it. */
export const teaHeld = (kitchen: Workbook, date: string, noted: object | null): Event => {
  const tea = kitchen.events.find(({ key }) => key === 'birthday-tea')!;
  return {
    ...structuredClone(tea),
    key: `tea-${date}`,
    name: `Tea of ${date}`,
    date,
    state: 'done',
    guests: [],
    costs: [serving, hall].map((line) => costLine.parse(line)),
    price: { ...tea.price, by: { aGuest: 1500 } },
    afterwards: noted && afterwards.parse(noted),
    served: {
      date,
      kitchen: kitchen.kitchen,
      places: kitchen.places.filter(({ key, kind }) => kind === 'home' || key === tea.place),
      ingredients: kitchen.ingredients,
      recipes: kitchen.recipes,
    },
  };
};

const came = [
  { group: 'adults', guests: 29 },
  { group: 'children', guests: 7 },
];

/** The example with two teas behind it: one with all its portions and hours noted, one of which nothing is. */
export const kitchenWithTeas = (): Workbook => {
  const kitchen = exampleKitchen();
  const noted = {
    came,
    left: [
      { dish: 'leek-tartlets', portions: '11' },
      { dish: 'shortbread', portions: '0' },
    ],
    spent: [{ line: 'serving', hours: '13.5', paid: 17_550 }],
  };
  kitchen.events.push(teaHeld(kitchen, '2026-09-12', noted), teaHeld(kitchen, '2026-10-03', null));
  kitchen.events.sort((a, b) => (a.key < b.key ? -1 : 1));
  return kitchen;
};
