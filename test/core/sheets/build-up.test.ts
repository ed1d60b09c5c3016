import { expect, test } from 'vitest';
import type { CostLine } from '../../../src/core/facts/cost-line.js';
import { byKey, type Facts } from '../../../src/core/facts/facts.js';
import { sellingPrice } from '../../../src/core/facts/price.js';
import { buildUp } from '../../../src/core/sheets/build-up.js';
import { buildUpSheet } from '../../../src/core/sheets/build-up-sheet.js';
import { costing } from '../../../src/core/sheets/costing.js';
import { foodInView } from '../../../src/core/sheets/food-in-view.js';
import { exampleKitchen } from '../../world.js';

const line = (key: string, by: CostLine['by']): CostLine => ({ key, name: key, kind: 'other', by, note: '' });

const teaWith = (costs: CostLine[], price: object, kitchen: object = {}) => {
  const book = exampleKitchen();
  Object.assign(book.kitchen, { tax: null, marginFloor: '30', ...kitchen });
  const tea = book.events.find(({ key }) => key === 'birthday-tea')!;
  Object.assign(tea, { costs, price: sellingPrice.parse(price) });
  const facts: Facts = {
    kitchen: book.kitchen,
    places: byKey(book.places),
    ingredients: byKey(book.ingredients),
    recipes: byKey(book.recipes),
  };
  return { tea, facts, built: buildUp(tea, facts, 'used').value, events: book.events };
};

const added = (figures: (number | undefined)[]) => figures.reduce<number>((all, one) => all + (one ?? 0), 0);
const hands = line('hands', { aGuest: 908 });
const hall = line('hall', { fixed: 4000 });

// 38 guests: food 149.05, hands 345.04, hall 40.00, together 534.09 or 14.05 a guest; at 26.00 it sells for 988.00.
test('rungs add up to the cost and to that of a guest, and the margin takes it on to the price', () => {
  const { built } = teaWith([hands, hall], { by: { aGuest: 2600 } });
  expect(built.rungs.map(({ cost }) => cost)).toEqual([14_905, 34_504, 4000]);
  expect(built.rungs.map(({ from }) => from)).toEqual([0, 14_905, 49_409]);
  expect(built.rungs.map(({ aGuest }) => aGuest)).toEqual([392, 908, 105]);
  expect(built.margin).toMatchObject({ cost: 45_391, aGuest: 1195, from: 53_409 });
  expect([built.price, built.alike, built.tax]).toEqual([{ total: 98_800, aGuest: 2600 }, true, undefined]);
  // 534.086 / 0.7.
  expect([built.floor, built.scale]).toEqual([76_298, 98_800]);
});

test('tax in the price is a rung below it, tax on top stands after it', () => {
  const tax = { name: 'VAT', rate: '20', rounding: 'whole-nearest' };
  const inside = teaWith([hands], { by: { aGuest: 2400 } }, { tax: { ...tax, included: true } }).built;
  expect([inside.sold.net, inside.tax?.cost, inside.price?.total]).toEqual([76_000, 15_200, 91_200]);
  expect(added([...inside.rungs.map(({ cost }) => cost), inside.margin?.cost, inside.tax?.cost])).toBe(
    91_200,
  );
  const onTop = teaWith([hands], { by: { aGuest: 2400 } }, { tax: { ...tax, included: false } }).built;
  expect([onTop.price?.total, onTop.tax, onTop.sold.total]).toEqual([
    91_200,
    expect.objectContaining({ cost: 18_240, from: 91_200 }),
    109_440,
  ]);
});

test('a loss is a margin below nothing, and children at half make the price an average', () => {
  const { built } = teaWith([hands, hall], {
    by: { aGuest: 1000 },
    groups: [{ group: 'children', pays: { percent: '50' } }],
  });
  expect([built.margin?.cost, built.alike]).toEqual([34_000 - 53_409, false]);
  expect(built.price).toEqual({ total: 34_000, aGuest: 895 });
});

test('a sum that is not known leaves the cost incomplete, without a margin or a line', () => {
  const { tea, facts, built } = teaWith([hands, line('hall', { fixed: null })], { by: { aGuest: 2600 } });
  expect([built.cost.complete, built.margin, built.floor]).toEqual([false, undefined, undefined]);
  const food = foodInView(costing(tea, facts).value, built);
  const { about, tables, foot } = buildUpSheet(built, food, []);
  const bought = buildUpSheet({ ...built, cost: { ...built.cost, view: 'bought' } }, food, []).foot;
  expect([foot, bought].map((said) => said.join(' ').includes('Each line costs what it uses'))).toEqual([
    true,
    false,
  ]);
  expect(about).toMatchObject({ cost: '', costKnown: '494.09', margin: '', food: '149.05' });
  expect(tables[0]!.rows.find(({ what }) => what === 'hall')).toMatchObject({
    amount: '',
    complete: 'no',
  });
});

test('dishes and ingredients add up to the food in either view, whatever is beside', () => {
  const { tea, facts, events } = teaWith([hands], {});
  const beside = events.filter(({ key }) => key !== tea.key);
  for (const view of ['used', 'bought'] as const) {
    const { value } = buildUp(tea, facts, view, beside);
    const { cost } = foodInView(costing(tea, facts).value, value);
    const dishes = cost.courses.flatMap((course) => course.dishes);
    expect(added(dishes.map((dish) => dish.cost)), view).toBe(value.cost.food.cost);
    expect(cost.total).toBe(value.cost.food.cost);
  }
});

// Used 149.05 and hands 345.04 at 30 %: 494.086 / 0.7 = 705.84, over 38 guests 18.58 rounded up. Whole packs cost more
// than what is used, so the same price leaves less of it.
test('a price set by margin is one price in both views, and what it leaves is seen in each', () => {
  const { tea, facts, built } = teaWith([hands], { by: { margin: '30' } });
  const bought = buildUp(tea, facts, 'bought').value;
  expect([built.sold.aGuest, bought.sold.aGuest]).toEqual([1858, 1858]);
  expect(bought.cost.exact.compare(built.cost.exact)).toBe(1);
  expect(bought.sold.margin!.compare(built.sold.margin!)).toBe(-1);
});
