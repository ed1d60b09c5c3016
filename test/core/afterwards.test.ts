import { expect, test } from 'vitest';
import { besideReal, dishesEaten } from '../../src/core/afterwards.js';
import { type Event, event } from '../../src/core/facts/event.js';
import { byKey, type Facts } from '../../src/core/facts/facts.js';
import { costing } from '../../src/core/sheets/costing.js';
import { wholeCost } from '../../src/core/whole-cost/cost-of-party.js';
import { exampleKitchen } from '../world.js';

const kitchen = exampleKitchen();
const facts: Facts = {
  kitchen: kitchen.kitchen,
  places: byKey(kitchen.places),
  ingredients: byKey(kitchen.ingredients),
  recipes: byKey(kitchen.recipes),
};
const tea = kitchen.events.find(({ key }) => key === 'birthday-tea')!;
const costs = [
  { key: 'serving', name: 'Serving', kind: 'hands', by: { rate: 1300, hours: '4', people: 3 } },
  { key: 'hall', name: 'Hall', kind: 'venue', by: { fixed: 8000 } },
];
const party = (afterwards: object | null, more: object = {}): Event =>
  event.parse({ ...tea, costs, afterwards, ...more });
const names = new Map(kitchen.ingredients.map(({ key, name }) => [key, name]));
const beside = (of: Event, view: 'used' | 'bought' = 'used') =>
  besideReal(of, facts, wholeCost(of, facts, view), costing(of, facts).value.ingredients, names);

test('nothing noted: nothing is known of what was real, and no difference is claimed', () => {
  const found = beside(party(null));
  expect(found.came).toBeUndefined();
  expect(found.total).toMatchObject({ planned: 14_905 + 15_600 + 8000, realKnown: false, real: 0 });
  expect(found.total.more).toBeUndefined();
  expect(found.lines.map(({ cost }) => cost.more)).toEqual([undefined, undefined]);
});

// Three at 4 hours are 12 hours at 13.00, 156.00; they worked 13.5 and were paid 175.50: 19.50 and 12.5 per cent more.
test('hours and money of a cost line beside its plan, in money and per cent', () => {
  const found = beside(
    party({
      spent: [
        { line: 'serving', hours: '13.5', paid: 17_550 },
        { line: 'hall', paid: 7500 },
      ],
    }),
  );
  const [serving, hall] = found.lines;
  expect([serving?.hours.planned?.toString(), serving?.hours.real?.toString()]).toEqual(['12', '13.5']);
  expect(serving?.cost).toMatchObject({ planned: 15_600, real: 17_550, more: 1950 });
  expect(serving?.cost.percent?.toString()).toBe('12.5');
  expect(hall?.cost).toMatchObject({ more: -500 });
  expect(hall?.cost.percent?.toString()).toBe('-6.25');
  expect(hall?.hours.real).toBeUndefined();
});

test('the food is known once all of it is noted, and then so is the whole', () => {
  const needed = costing(tea, facts).value.ingredients.filter(({ ingredient }) => !ingredient.notBought);
  const bought = needed.map(({ ingredient }) => ({ ingredient: ingredient.key, amount: null, paid: 1000 }));
  const spent = [
    { line: 'serving', paid: 15_600 },
    { line: 'hall', paid: 8000 },
  ];
  const all = beside(party({ bought, spent }));
  expect(all.food).toMatchObject({
    real: 1000 * bought.length,
    realKnown: true,
    more: 1000 * bought.length - 14_905,
  });
  expect(all.total).toMatchObject({ more: 1000 * bought.length - 14_905, realKnown: true });
  const some = beside(party({ bought: bought.slice(1), spent }));
  expect(some.food).toMatchObject({ realKnown: false, more: undefined });
  expect(some.total).toMatchObject({ realKnown: false, more: undefined });
  const unpaid = beside(party({ bought: [{ ...bought[0], paid: null }, ...bought.slice(1)], spent }));
  expect(unpaid.food.realKnown).toBe(false);
});

test('in whole packs the rows of the ingredients add up to the food, as in the other view', () => {
  for (const view of ['used', 'bought'] as const) {
    const { food, ingredients } = beside(party(null), view);
    expect(ingredients.reduce((sum, { cost }) => sum + cost.planned, 0)).toBe(food.planned);
  }
});

test('what was bought beside the plan has a row of its own, planned at nothing', () => {
  const { ingredients } = beside(party(null));
  const other = kitchen.ingredients
    .map(({ key }) => key)
    .find((key) => !ingredients.some((one) => one.key === key))!;
  const found = beside(party({ bought: [{ ingredient: other, paid: 300 }] })).ingredients.at(-1);
  expect(found).toMatchObject({
    key: other,
    name: names.get(other),
    planned: undefined,
    cost: { planned: 0, real: 300, more: 300 },
  });
});

// 30 adults and 8 children as half are 34 portions, 37.4 with a tenth more, so 38 tartlets; 11 came back: 27 eaten,
// of 36 who came 0.75.
test('portions eaten of a dish: made less left, for each guest who came; unknown while one of these is', () => {
  const noted = {
    came: [
      { group: 'adults', guests: 29 },
      { group: 'children', guests: 7 },
    ],
    left: [{ dish: 'leek-tartlets', portions: '11' }],
  };
  const of = (afterwards: object) =>
    dishesEaten(party(afterwards), facts).find(({ dish }) => dish.key === 'leek-tartlets')!;
  const found = of(noted);
  expect([found.made, found.left, found.eaten, found.aGuest].map(String)).toEqual(['38', '11', '27', '0.75']);
  expect(of({ ...noted, left: [] })).toMatchObject({ left: undefined, eaten: undefined, aGuest: undefined });
  expect(of({ ...noted, came: noted.came.slice(1) }).aGuest).toBeUndefined();
  expect(
    of({
      ...noted,
      came: [
        { group: 'adults', guests: 0 },
        { group: 'children', guests: 0 },
      ],
    }).aGuest,
  ).toBeUndefined();
  expect(of({ ...noted, left: [{ dish: 'leek-tartlets', portions: '40' }] }).eaten?.toString()).toBe('0');
});
