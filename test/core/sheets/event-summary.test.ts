import { describe, expect, test } from 'vitest';
import { byKey } from '../../../src/core/facts/facts.js';
import { guestChange } from '../../../src/core/guest-change.js';
import { eventSummary } from '../../../src/core/sheets/event-summary.js';
import { eventSummarySheet } from '../../../src/core/sheets/event-summary-sheet.js';
import { dish, factsOf, food, labelled, pack, party, steps } from '../small.js';

const leek = food('leek', { ...pack('1 kg at 240'), ...labelled() });
const facts = factsOf([
  dish('tart', '10 portions, 2 kg', ['2 kg leek'], steps({ minutes: 45 })),
  dish('soup', '10 portions', ['2.5 kg leek']),
  leek,
]);
const answered = { eatsAll: 10 };

// Ten guests eat 2 kg of tart and 2.5 kg of soup: 450 g each, for 10.80, 1.08 each. The tart starts at 17:15.
test('one event on a page', () => {
  const { value, problems } = eventSummary(party(10, ['tart', 'soup'], answered), facts);
  const [tart, soup] = value.courses[0]!.dishes;
  expect([
    tart!.gramsAGuest!.toString(),
    soup!.gramsAGuest!.toString(),
    value.gramsAGuest!.toString(),
  ]).toEqual(['200', '250', '450']);
  expect([value.cost.total, value.cost.aGuest, tart!.aPortion, soup!.aPortion]).toEqual([1080, 108, 48, 60]);
  expect([tart!.starts, soup!.starts, value.courses[0]!.servedOn]).toEqual([1035, undefined, '2026-11-28']);
  expect(problems).toEqual([]);
});

// 300 g of tart instead of 200 are 3 kg for 10, half as much again: 15 of the 10-portion trays' worth, so 2 trays.
test('a larger portion weighs more and fills more trays', () => {
  const baked = steps({ minutes: 30, oven: { heat: 180 }, portionsPerShelf: '10' });
  const own = { recipe: 'tart', portion: { amount: '300', unit: 'g' } };
  const two = { recipe: 'tart', portion: { amount: '2', unit: 'each' } };
  const baking = factsOf([dish('tart', '10 portions, 2 kg', ['2 kg leek'], baked), leek]);
  const [first, second] = eventSummary(party(10, [own, two], answered), baking).value.courses[0]!.dishes;
  expect([first!.gramsAGuest!.toString(), first!.trays]).toEqual(['300', 2]);
  expect([second!.gramsAGuest!.toString(), second!.trays]).toEqual(['400', 2]);
});

describe('what must be settled', () => {
  const codes = (more: object[], dishes: string[]) =>
    eventSummary(party(10, dishes, answered), factsOf([...more] as never)).problems.map(({ code }) => code);

  test('a slipped decimal deep in a component is seen', () => {
    const sauce = dish('sauce', '20 kg', ['2 kg leek']);
    expect(codes([dish('pie', '10 portions', ['1 kg @sauce']), sauce, leek], ['pie'])).toContain('odd-yield');
  });

  test('an unread label is asked for once, with all the dishes it leaves open', () => {
    const jar = food('jar', pack('1 kg at 300'));
    const both = [dish('pie', '1 portion', ['1 g jar']), dish('soup', '1 portion', ['1 g jar']), jar];
    const { problems } = eventSummary(party(10, ['pie', 'soup'], answered), factsOf(both));
    expect(problems.map(({ sentence }) => sentence)).toEqual([
      'Pie and Soup: 14 allergens not known. Read the label of Jar.',
    ]);
  });

  test('a recipe without lines leaves cost, weight and allergens open', () => {
    const empty = factsOf([dish('cake', '10 portions', [])]);
    const { value, problems } = eventSummary(party(10, ['cake'], answered), empty);
    expect(problems.map(({ code }) => code)).toEqual(['no-lines']);
    expect([value.cost.complete, value.gramsAGuest]).toEqual([false, undefined]);
    expect(value.courses[0]!.dishes[0]!.allergens.every(({ state }) => state === 'unknown')).toBe(true);
  });
});

// 40 guests of a tart for 10 at 4.80 are 4 batches and 19.20; 46 are 4.6 batches and 22.08, 2.88 more.
test('the head-count from 40 to 46', () => {
  const event = party(40, ['tart'], { eatsAll: 40 });
  const { dishes, more, before, after, problems } = guestChange(event, new Map([['adults', 46]]), facts);
  expect([before.cost.total, after.cost.total, more]).toEqual([1920, 2208, 288]);
  expect(dishes[0]!.batches!.toString()).toBe('0.6');
  const open = { sentence: '6 guests have not answered about diet.' };
  expect(problems).toMatchObject([{ problem: open, isNew: true }]);
});

// A done event is worked out from what was kept: leeks at 2.40 then, at 9.99 now.
test('a done event keeps its prices', () => {
  const now = food('leek', { ...labelled(), ...pack('1 kg at 999') });
  const today = { ...facts, ingredients: byKey([now]) };
  const served = {
    date: '2026-11-28',
    kitchen: facts.kitchen,
    places: [...facts.places.values()],
    ingredients: [leek],
    recipes: [...facts.recipes.values()],
  };
  const total = (more: object) => eventSummary(party(10, ['tart'], more), today).value.cost.total;
  expect([total({}), total({ state: 'done', served })]).toEqual([1998, 480]);
});

// 450 g a guest as above; a soup on 1 l of a stock that nobody weighed leaves that open, and says whose weight.
test('grams a guest stand on the sheet, and what is not weighed is named', () => {
  const { about, tables, foot } = eventSummarySheet(
    eventSummary(party(10, ['tart', 'soup'], answered), facts),
  );
  expect([about.gramsAGuest, about.unweighed]).toEqual(['450', '']);
  expect(tables[0]!.rows.map(({ gramsAGuest, starts }) => [gramsAGuest, starts])).toEqual([
    ['200', '2026-11-28T17:15'],
    ['250', ''],
  ]);
  expect(foot.join(' ')).toMatch(/portion factor.*Whole pieces.*exact amount.*preferred pack/);
  const stock = dish('stock', '2 l', ['1 kg leek']);
  const thin = factsOf([dish('soup', '10 portions', ['1 l @stock', '2 each egg']), stock, leek, food('egg')]);
  const { value } = eventSummary(party(10, ['soup'], answered), thin);
  expect([value.gramsAGuest, value.unweighed.map(({ key, field }) => `${key} ${field}`)]).toEqual([
    undefined,
    ['stock yield', 'egg weights'],
  ]);
});

test('on the sheet, a cost that is not complete is no cost, and what is known stands beside it', () => {
  const unpriced = factsOf([dish('pie', '10 portions', ['1 kg leek', '1 g saffron']), leek, food('saffron')]);
  const sheet = eventSummarySheet(eventSummary(party(10, ['pie']), unpriced));
  expect(sheet.about).toMatchObject({ cost: '', costKnown: '2.40', costAGuest: '', complete: 'false' });
  expect(sheet.tables[0]!.rows[0]).toMatchObject({ cost: '', costKnown: '2.40', aPortion: '' });
  expect(sheet.tables[0]!.rows[0]!.notKnown!.split('; ')).toHaveLength(14);
});

test('no guests, no courses, nothing falls over', () => {
  const { value } = eventSummary(party(0, ['tart', 'soup']), facts);
  expect([value.cost.total, value.cost.aGuest, value.gramsAGuest]).toEqual([0, undefined, undefined]);
  expect(value.courses[0]!.dishes[0]!.aPortion).toBeUndefined();
  expect(eventSummary(party(10, [], { courses: [] }), facts).value.gramsAGuest!.toString()).toBe('0');
});
