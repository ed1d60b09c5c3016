import { beforeAll, expect, test } from 'vitest';
import type { Event } from '../../../src/core/facts/event.js';
import { waysOut } from '../../../src/core/way-out/find.js';
import type { StoodIn } from '../../../src/core/way-out/others.js';
import type { Solve } from '../../../src/core/way-out/ways.js';
import { loadSolver } from '../../../src/way-out/highs.js';
import { dish, factsOf, food, labelled, pack, party, steps } from '../small.js';

let solve: Solve;
beforeAll(async () => {
  solve = await loadSolver();
});

const standsIn = (...keys: string[]) => ({
  substitutes: keys.map((key) => ({
    key: `s-${key}`,
    item: { ingredient: key },
    caution: `Mind the ${key}.`,
  })),
});
const docs = [
  food('cod', { ...labelled({ contains: ['fish'] }), ...pack('1 kg at 1000') }),
  food('butter', {
    ...labelled({ contains: ['milk'] }),
    ...pack('1 kg at 500'),
    ...standsIn('spread', 'almond', 'jar'),
  }),
  food('spread', { ...labelled(), ...pack('1 kg at 800') }),
  food('almond', { ...labelled({ contains: ['almond'] }), ...pack('1 kg at 100') }),
  food('jar', pack('1 kg at 50')),
  food('bean', { ...labelled(), ...pack('1 kg at 300') }),
  dish('cod-bake', '10 portions', ['1 kg cod', '500 g butter'], steps({ minutes: 20 })),
  dish('beans', '10 portions', ['2 kg bean'], steps({ minutes: 12 }, { minutes: 60, attended: false })),
];
const facts = factsOf(docs);
const guest = (name: string, diets: string[], more: object = {}) => ({
  key: name.toLowerCase(),
  name,
  group: 'adults',
  diets,
  ...more,
});
const find = (event: Event, from = facts, stoodIn: StoodIn = new Map()) =>
  waysOut(event, from, stoodIn, solve);
const moves = (event: Event, from = facts) =>
  find(event, from).ways.map((way) => way.moves.map(({ dish, guests, who }) => [dish, guests, ...who]));
const supper = (...guests: object[]) => party(10, ['cod-bake'], { guests, eatsAll: 10 - guests.length });
const withoutBeans = factsOf(docs.filter(({ key }) => key !== 'beans'));

// Ana is allergic to milk. One portion of the bake has 50 g of butter (25p): with spread it is 40p, so 15p more; beans
// are 200 g at 60p instead of a bake of 125p, 65p less, and 12 minutes at the pot. The jar's label is not read.
test('a swap and another dish, the cheaper first, each with its cost and work', () => {
  const { ways, allergy, lacking } = find(supper(guest('Ana', ['no-milk'])));
  expect(ways.map(({ dishes, more, work }) => [dishes, more, work])).toEqual([
    [1, -65, 12],
    [1, -25 + 5, 20],
    [1, 15, 20],
  ]);
  expect(ways.map(({ moves: [move] }) => [move!.kind, move!.how, move!.cautions])).toEqual([
    ['other', '', []],
    ['made', 'almond for butter', ['Almond: Mind the almond.']],
    ['made', 'spread for butter', ['Spread: Mind the spread.']],
  ]);
  expect([allergy, lacking]).toEqual([true, [{ who: 'Ana (no milk)', course: 'Main', open: false }]]);
});

test('the changed menu has the variant for its guests, kept for them, and fewer of the base', () => {
  const [way] = find(supper(guest('Ana', ['no-milk']), guest('Bo', ['no-milk'])), withoutBeans).ways;
  expect(way!.recipes.map(({ key, variantOf }) => [key, variantOf])).toEqual([
    ['cod-bake-almond-for-butter', 'cod-bake'],
  ]);
  expect(way!.event.courses[0]!.dishes).toMatchObject([
    { key: 'd0', recipe: 'cod-bake', eaters: { counts: [{ group: 'adults', guests: 8 }] } },
    {
      key: 'd1',
      recipe: 'cod-bake-almond-for-butter',
      eaters: { counts: [{ group: 'adults', guests: 2 }] },
      service: 'plated',
      keptFor: ['ana', 'bo'],
    },
  ]);
});

// Bo is allergic to nuts: almonds for butter would bring them to Ana's table. At another table they do not.
test('a swap that brings another guest’s allergen is offered at no table they share', () => {
  const at = (table: string) => ({ table });
  const how = (...guests: object[]) =>
    find(supper(...guests), withoutBeans).ways.map(({ moves: [move] }) => move!.how);
  const ana = guest('Ana', ['no-milk'], at('1'));
  expect(how(ana, guest('Bo', ['no-nuts'], at('1')))).toEqual(['spread for butter']);
  expect(how(ana, guest('Bo', ['no-nuts']))).toEqual(['spread for butter']);
  expect(how(ana, guest('Bo', ['no-nuts'], at('2')))).toEqual(['almond for butter', 'spread for butter']);
  // Cy cannot eat the bake for its fish; almonds at his table would be one harm more.
  expect(how(ana, guest('Cy', ['no-fish', 'no-nuts'], at('1')))).toEqual(['spread for butter']);
});

// With fish out as well the bake has nothing left to be: cod is two thirds of it, so it is not left out.
test('one dish that does for two diets comes before two dishes', () => {
  const both = supper(guest('Ana', ['no-milk']), guest('Bo', ['no-fish']));
  expect(moves(both)[0]).toEqual([['Beans', 2, 'Ana (no milk)', 'Bo (no fish)']]);
  const { nothing, ways } = find(both, withoutBeans);
  expect(nothing).toEqual([{ who: 'Bo (no fish)', course: 'Main', open: false }]);
  expect(ways[0]!.moves.map(({ who }) => who)).toEqual([['Ana (no milk)']]);
});

test('an unread label is never a yes, and says that it is in the way', () => {
  const unread = factsOf([food('jar', pack('1 kg at 50')), dish('mystery', '10 portions', ['1 kg jar'])]);
  const event = party(10, ['mystery'], { guests: [guest('Ana', ['no-milk'])], eatsAll: 9 });
  expect(find(event, unread)).toMatchObject({
    ways: [],
    nothing: [{ who: 'Ana (no milk)', course: 'Main', open: true }],
  });
});

test('who has not answered is counted and never covered; a wish in their own words is named', () => {
  const { lacking, notAnswered, wishes } = find(
    supper(guest('Ana', ['no-milk'], { answered: false }), guest('Bo', [], { other: 'soft food' })),
  );
  expect([lacking, notAnswered, wishes]).toEqual([[], 1, [{ who: 'Bo', other: 'soft food' }]]);
});

// Beans are on the menu for 2 and 4 vegans need them: two more of the same, no dish more.
test('portions that do not reach are made more of, and those there are count', () => {
  const event = party(
    10,
    ['cod-bake', { recipe: 'beans', eaters: { counts: [{ group: 'adults', guests: 2 }] } }],
    {
      guests: [{ ...guest('', ['no-fish']), key: 'four', count: 4 }],
      eatsAll: 6,
    },
  );
  const [way] = find(event).ways;
  expect(way).toMatchObject({ dishes: 0, work: 0, more: 120 });
  expect(way!.moves).toMatchObject([{ kind: 'more', dish: 'Beans', guests: 2 }]);
  expect(way!.event.courses[0]!.dishes[1]!.eaters).toEqual({ counts: [{ group: 'adults', guests: 4 }] });
});

test('at a buffet a portion of what they can eat is kept back, which costs nothing', () => {
  const event = party(10, ['beans'], { guests: [guest('Ana', ['no-milk'])], eatsAll: 9 });
  const buffet = { ...event, courses: event.courses.map((one) => ({ ...one, service: 'shared' as const })) };
  const [way] = find(buffet).ways;
  expect(way).toMatchObject({ dishes: 0, more: 0, work: 0, moves: [{ kind: 'kept', dish: 'Beans' }] });
  expect(way!.event.courses[0]!.dishes[0]!.keptFor).toEqual(['ana']);
});

test('a missing price is not known, never nothing; a dish of another course is not offered', () => {
  const free = factsOf([...docs.filter(({ key }) => key !== 'bean'), food('bean', labelled())]);
  const { ways } = find(supper(guest('Ana', ['no-milk'])), free);
  expect(ways.map(({ more, moves: [move] }) => [move!.dish, more])).toEqual([
    ['Cod bake, almond for butter', -20],
    ['Cod bake, spread for butter', 15],
    ['Beans', undefined],
  ]);
  const stood = new Map([
    ['beans', new Map([['pudding', 2]])],
    ['cod-bake', new Map([['main', 1]])],
  ]);
  const event = supper(guest('Ana', ['no-milk']));
  const pudding = { ...event.courses[0]!, key: 'pudding', name: 'Pudding', dishes: [] };
  const dishes = find({ ...event, courses: [...event.courses, pudding] }, facts, stood).ways.flatMap((way) =>
    way.moves.map(({ dish }) => dish),
  );
  expect(dishes).not.toContain('Beans');
});
