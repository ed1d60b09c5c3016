import { expect, test } from 'vitest';
import { coverageOf, coverageProblems, notAnswered } from '../../src/core/coverage.js';
import type { Event } from '../../src/core/facts/event.js';
import { dish, factsOf, food, labelled, party } from './small.js';

const facts = factsOf([
  dish('stew', '1 portion', ['1 g beef']),
  dish('cheese-pie', '1 portion', ['1 g cheese']),
  dish('mystery', '1 portion', ['1 g jar']),
  dish('crisps', '1 portion', ['1 g crisp']),
  food('beef', labelled()),
  food('cheese', labelled({ contains: ['milk'] })),
  food('jar'),
  food('crisp', labelled({ may: ['milk'] })),
]);
const guest = (more: object) => ({ key: 'ana', name: 'Ana', group: 'adults', ...more });
const say = (event: Event) =>
  coverageProblems(event, coverageOf(event, facts)).map(({ sentence }) => sentence);
const has = (event: Event) => coverageOf(event, facts).rows.map(({ courses }) => courses[0]!.has);
const withGuest = (dishes: (string | object)[], more: object, rest: object = { eatsAll: 9 }) =>
  party(10, dishes, { guests: [guest(more)], ...rest });

test('who finds nothing, only what is not known, or only traces, is said with how bad it is', () => {
  const noMilk = { diets: ['no-milk'] };
  expect(say(withGuest(['cheese-pie'], noMilk))).toEqual(['Ana (no milk) has nothing to eat in main.']);
  expect(say(withGuest(['mystery'], noMilk))).toEqual(['Ana (no milk): what is in main is not fully known.']);
  expect(say(withGuest(['crisps'], noMilk))).toEqual([
    'Ana (no milk): everything in main may contain what they avoid.',
  ]);
  expect(say(withGuest(['cheese-pie', 'stew'], noMilk))).toEqual([]);
  expect(say(withGuest(['mystery', 'crisps'], noMilk))).toHaveLength(1);
});

// Without milk the pie is out; without fish everything else is in; with both, the harder of the two stands for each dish.
test('a guest with two diets needs one dish that does for both', () => {
  expect(has(withGuest(['cheese-pie', 'stew'], { diets: ['no-fish', 'no-milk'] }))).toEqual(['yes']);
  expect(has(withGuest(['cheese-pie'], { diets: ['no-fish', 'no-milk'] }))).toEqual(['no']);
});

test('one who has not answered is never covered', () => {
  expect(has(withGuest(['stew'], { answered: false }))).toEqual(['unknown']);
  expect(say(withGuest(['stew'], { answered: false }))).toEqual(['1 guest has not answered about diet.']);
});

// 10 guests, one named and answered, 7 who eat everything: 2 are left. Asked and unanswered count at least.
test('those not heard from are counted', () => {
  expect(notAnswered(withGuest([], {}, { eatsAll: 7 }))).toBe(2);
  expect(say(withGuest(['stew'], {}, { eatsAll: 7 }))).toEqual(['2 guests have not answered about diet.']);
  expect(notAnswered(withGuest([], { answered: false, count: 4 }, { eatsAll: 9 }))).toBe(4);
  expect(say(withGuest(['stew'], {}, { eatsAll: 12 }))).toEqual(['3 more answers about diet than guests.']);
});

test('a wish in their own words is the cook’s to judge, and hides nothing else', () => {
  const soft = { other: 'soft food' };
  expect(has(withGuest(['stew'], soft))).toEqual(['unknown']);
  expect(say(withGuest(['stew'], soft))).toEqual([
    'Ana: “soft food” is a wish in their own words, for you to judge.',
  ]);
  expect(say(withGuest(['mystery'], { ...soft, diets: ['no-milk'] }))).toHaveLength(2);
});

test('a dish for another group covers nobody here', () => {
  const children = { recipe: 'stew', eaters: { counts: [{ group: 'children', guests: 3 }] } };
  expect(has(withGuest([children], { diets: ['no-milk'] }))).toEqual(['no']);
  expect(has(party(10, [children], { guests: [guest({ group: 'children' })] }))).toEqual(['yes']);
  expect(has(withGuest(['stew'], { group: 'gone' }))).toEqual(['no']);
});

test('guests known by number are said as a number', () => {
  const three = withGuest(['cheese-pie'], { name: '', count: 3, diets: ['no-milk'] }, { eatsAll: 7 });
  expect(say(three)).toEqual(['3 no milk have nothing to eat in main.']);
});
