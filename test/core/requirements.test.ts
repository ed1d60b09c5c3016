import { describe, expect, test } from 'vitest';
import type { Event } from '../../src/core/facts/event.js';
import { recipe } from '../../src/core/facts/recipe.js';
import { eatersOf, headCount, requirementsOf, worstFirst } from '../../src/core/requirements.js';
import { dish, factsOf, food, lines, party } from './small.js';

const groups = (adults: number, children: number) => ({
  groups: [
    { key: 'adults', name: 'Adults', guests: adults },
    { key: 'children', name: 'Children', guests: children, portion: '1/2' },
  ],
});
const soup = dish('soup', '10 portions', ['2.5 kg leek', '3 l water']);
const rolls = dish('rolls', '12 portions', ['500 g flour'], { byPiece: true });
const facts = factsOf([soup, rolls, ...['leek', 'water', 'flour'].map((key) => food(key))]);
const portions = (event: Event) =>
  requirementsOf(event, facts).flatMap(({ dishes }) => dishes.map((one) => one.portions.toString()));
const amount = (event: Event, at: string) => lines(event, facts).get(at)!.amount!.toString();

// 40 guests of a soup for 10 are 4 batches, 10 kg of leeks; 46 guests are 4.6 batches, 11.5 kg.
test('head-count 40 to 46: leeks from 10 kg to 11.5 kg', () => {
  expect(amount(party(40, ['soup']), 'soup/l0')).toBe('10');
  expect(amount(party(46, ['soup']), 'soup/l0')).toBe('11.5');
});

// 12 adults at a whole portion and 5 children at a half are 12 + 2.5 = 14.5 portions, not rounded; as pieces 15.
test('children eat half, and only pieces round up', () => {
  expect(portions(party(0, ['soup', 'rolls'], groups(12, 5)))).toEqual(['14.5', '15']);
});

// 40 guests and 10 % more are 44; 7 rolls and 10 % more are 7.7, so 8.
test('over-catering comes before the rounding to pieces', () => {
  expect(portions(party(40, ['soup'], { overCatering: '10' }))).toEqual(['44']);
  expect(portions(party(7, ['rolls'], { overCatering: '10' }))).toEqual(['8']);
});

// 75 % of 48 adults are 36; of 12 children at a half, 25 % are 3 children, 1.5 portions: 37.5. A group not named: none.
test('a share of each group; a group not named eats none', () => {
  const shares = (list: object[]) => ({ recipe: 'soup', eaters: { shares: list } });
  const adults = { group: 'adults', percent: '75' };
  const both = [adults, { group: 'children', percent: '25' }];
  expect(portions(party(0, [shares(both), shares([adults])], groups(48, 12)))).toEqual(['37.5', '36']);
});

// 8 adults and 3 children by number: 8 + 1.5 = 9.5, whatever the head-count.
test('a number of each group does not follow the head-count', () => {
  const counts = [
    { group: 'adults', guests: 8 },
    { group: 'children', guests: 3 },
  ];
  const some = { recipe: 'soup', eaters: { counts } };
  for (const adults of [40, 46]) expect(portions(party(0, [some], groups(adults, 6)))).toEqual(['9.5']);
  const event = party(0, [some], groups(40, 6));
  expect([...eatersOf(event.courses[0]!.dishes[0]!.eaters, event)].map(([, n]) => n.toString())).toEqual([
    '8',
    '3',
  ]);
  expect(headCount(event)).toBe(46);
});

// A portion of 150 g where the recipe makes 20 of 100 g, 2 kg in all: 40 guests want 6 kg, 3 batches.
test('a portion of the dish’s own size asks for the weight', () => {
  const stew = dish('stew', '20 portions, 2 kg', ['1 kg beef']);
  const own = { recipe: 'stew', portion: { amount: '150', unit: 'g' } };
  const [course] = requirementsOf(party(40, [own]), factsOf([stew, food('beef')]));
  expect(course!.dishes[0]!.recipes[0]!.factor!.toString()).toBe('3');
  expect(course!.dishes[0]!.portion).toMatchObject({ base: 'g' });
});

// A recipe that makes 2 kg and no stated portions can't be asked for by portions: the dish says so, and nothing is 0.
test('what a recipe makes is not stated that way', () => {
  const dough = dish('dough', '2 kg', ['1 kg flour']);
  const [course] = requirementsOf(party(40, ['dough']), factsOf([dough, food('flour')]));
  const [need] = course!.dishes;
  expect(need!.recipes[0]!.factor).toBeUndefined();
  expect(need!.recipes[0]!.lines[0]!.amount).toBeUndefined();
  expect(need!.problems.map(({ code }) => code)).toEqual(['no-recipe-yield']);
});

describe('nobody and nothing', () => {
  test('no guests want nothing, and no courses are no needs', () => {
    expect(amount(party(0, ['soup']), 'soup/l0')).toBe('0');
    expect(requirementsOf(party(40, [], { courses: [] }), facts)).toEqual([]);
  });

  test('a recipe that contains itself is our own mistake and throws; so does a key that leads nowhere', () => {
    const loop = factsOf([
      dish('a', '1 portion', ['1 portion @b']),
      dish('b', '1 portion', ['1 portion @a']),
    ]);
    expect(() => requirementsOf(party(1, ['a']), loop)).toThrow('contains itself');
    const lost = factsOf([recipe.parse({ ...dish('a', '1 portion', ['1 g gone']) })]);
    expect(() => requirementsOf(party(1, ['a']), lost)).toThrow('no ingredient gone');
    expect(() => requirementsOf(party(1, ['gone']), facts)).toThrow('no recipe gone');
  });
});

test('problems are told once, worst first', () => {
  const subject = { entity: 'event', key: 'e', name: 'E' } as const;
  const told = worstFirst([
    { weight: 'check', code: 'a', sentence: 'A.', subject },
    { weight: 'ask', code: 'b', sentence: 'B.', subject },
    { weight: 'stop', code: 'c', sentence: 'C.', subject },
    { weight: 'ask', code: 'b', sentence: 'B.', subject },
  ]);
  expect(told.map(({ code }) => code)).toEqual(['c', 'b', 'a']);
});
