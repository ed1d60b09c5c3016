import { expect, test } from 'vitest';
import { answersOf } from '../../src/core/answers.js';
import { coverageOf, coverageProblems } from '../../src/core/coverage.js';
import { coveredOf } from '../../src/core/covered.js';
import { forgetInEvent, hasSaid, keysOfForgotten } from '../../src/core/forget.js';
import { dish, factsOf, food, party } from './small.js';

const facts = factsOf([dish('stew', '10 portions, 5 kg', ['1 kg leek']), food('leek')]);
const event = party(10, ['stew'], {
  eatsAll: 8,
  guests: [
    { key: 'nut-ana', name: 'Ana', group: 'adults', diets: ['no-nuts'], other: 'soft food' },
    { key: 'bo', name: 'Bo', group: 'adults', diets: ['vegan'] },
  ],
});
const keys = keysOfForgotten(['nut-ana'], new Set(['nut-ana', 'bo', 'forgotten-1']));

test('one whose diets are forgotten is a guest who has not answered; the others are as they were', () => {
  const { guests } = forgetInEvent(event, { keys, names: false });
  expect(guests).toMatchObject([
    { key: 'forgotten-2', name: 'Ana', count: 1, group: 'adults', answered: false, diets: [], other: '' },
    event.guests[1],
  ]);
  expect(guests.map(hasSaid)).toEqual([false, true]);
  expect(forgetInEvent(event, { keys, names: true }).guests[0]).toMatchObject({ name: '' });
});

test('what one does not eat and the dishes kept for one go as well, and old files get no new fields', () => {
  const said = { key: 'bo', avoids: ['leek'], traces: false };
  const dishes = [{ keptFor: ['bo', 'ana'] }, {}];
  const kept = { guests: [said, { key: 'old', diets: ['vegan'] }], courses: [{ dishes }, {}] };
  const keys = keysOfForgotten(['bo', 'old'], new Set());
  expect([said, { key: 'ana' }, { key: 'cy', traces: false }].map(hasSaid)).toEqual([true, false, true]);
  expect(forgetInEvent(kept, { keys, names: false })).toEqual({
    guests: [
      { key: 'forgotten-1', answered: false, diets: [], avoids: [], traces: true, other: '' },
      { key: 'forgotten-2', answered: false, diets: [], other: '' },
    ],
    courses: [{ dishes: [{ keptFor: ['ana'] }, {}] }, {}],
  });
});

// Ten guests: two listed, eight eat everything. Forgetting one is no answer, so nine have answered and one has not.
test('no sheet counts them as covered or as eating everything, also once the party is over', () => {
  expect(answersOf(event)).toMatchObject({ listed: 2, eatsAll: 8, notAnswered: 0 });
  const after = forgetInEvent(event, { keys, names: false });
  expect(answersOf(after)).toMatchObject({ listed: 1, eatsAll: 8, notAnswered: 1, over: 0 });
  const coverage = coverageOf(after, facts);
  expect(coverageProblems(after, coverage).map(({ code }) => code)).toContain('not-answered');
  expect(coverage.rows[0]!.cells.map(({ verdict }) => verdict)).toEqual(['unknown']);
  expect(coveredOf(coverage.rows[0]!, true)).toEqual({ words: 'Not known', loud: true });
});
