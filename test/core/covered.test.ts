import { expect, test } from 'vitest';
import { answersOf } from '../../src/core/answers.js';
import { coverageOf } from '../../src/core/coverage.js';
import { coveredOf, notListed } from '../../src/core/covered.js';
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
const guest = { key: 'ana', name: 'Ana', group: 'adults', diets: ['no-milk'] };
const course = (key: string, ...dishes: string[]) => ({
  key: key.toLowerCase(),
  name: key,
  time: '18:00',
  dishes: dishes.map((recipe) => ({ key: recipe, recipe })),
});
const eaten = (courses: object[], more: object = {}) => {
  const event = party(1, [], { guests: [{ ...guest, ...more }], courses });
  return coveredOf(coverageOf(event, facts).rows[0]!);
};

test('what a guest is left with over all courses is said in words, the worst first', () => {
  expect(eaten([course('Main', 'stew')])).toEqual({ words: 'Covered', loud: false });
  expect(eaten([course('Main', 'stew', 'cheese-pie')])).toEqual({
    words: 'Covered, by 1 dish',
    loud: false,
  });
  expect(eaten([course('Main', 'cheese-pie'), course('Pudding')])).toEqual({
    words: 'No main, no pudding',
    loud: true,
  });
  expect(eaten([course('Starter', 'mystery'), course('Main', 'crisps'), course('Pudding')]).words).toBe(
    'No pudding, starter not known, main only with a may contain',
  );
  expect(eaten([])).toEqual({ words: 'No menu yet', loud: false });
});

test('one who has not answered is asked, and a wish in their own words is the cook’s to judge', () => {
  expect(eaten([course('Main', 'stew')], { answered: false })).toEqual({ words: 'Ask today', loud: true });
  expect(eaten([course('Main', 'stew')], { other: 'soft food' })).toEqual({
    words: 'Yours to judge',
    loud: true,
  });
  expect(eaten([course('Starter', 'mystery')], { other: 'soft food' }).words).toBe(
    'Starter not known, yours to judge',
  );
});

// 20 guests: 3 listed and answered, 2 asked and not heard from, 12 eat everything; 20 - 3 - 12 = 5 have not
// answered, and 3 of those are not listed.
test('those not listed who have not answered are told apart from those listed', () => {
  const event = party(20, ['stew'], {
    guests: [
      { ...guest, count: 3 },
      { ...guest, key: 'bo', answered: false, count: 2 },
    ],
    eatsAll: 12,
  });
  expect(answersOf(event)).toEqual({ guests: 20, listed: 3, eatsAll: 12, notAnswered: 5, over: 0 });
  expect(notListed(coverageOf(event, facts))).toBe(3);
  expect(answersOf({ ...event, eatsAll: 18 }).over).toBe(3);
});
