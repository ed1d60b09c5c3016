import { describe, expect, test } from 'vitest';
import { coverageOf, coverageProblems } from '../../src/core/coverage.js';
import { coveredOf } from '../../src/core/covered.js';
import type { Event } from '../../src/core/facts/event.js';
import { traits } from '../../src/core/facts/traits.js';
import { countsFor, needsApart } from '../../src/core/kept-apart.js';
import { allergenMatrix } from '../../src/core/sheets/allergen-matrix.js';
import { allergenMatrixSheet } from '../../src/core/sheets/allergen-matrix-sheet.js';
import { dish, factsOf, food, labelled, party } from './small.js';

const plain = { traits: Object.fromEntries(traits.map((trait) => [trait, 'no'])) };
const facts = factsOf([
  dish('stew', '1 portion', ['1 g beef']),
  dish('lentil-pie', '1 portion', ['1 g lentil']),
  dish('hummus', '1 portion', ['1 g lentil']),
  dish('crisps', '1 portion', ['1 g crisp']),
  dish('mystery', '1 portion', ['1 g jar']),
  food('beef', { ...labelled(), traits: { ...plain.traits, meat: 'yes', beef: 'yes' } }),
  food('lentil', { ...labelled(), ...plain }),
  food('crisp', { ...labelled({ may: ['milk'] }), ...plain }),
  food('jar'),
]);
const guest = (more: object) => ({ key: 'ana', name: 'Ana', group: 'adults', ...more });
const vegans = (count: number, more: object = {}) =>
  guest({ key: 'v', name: '', count, diets: ['vegan'], ...more });
const made = (recipe: string, guests: number, more: object = {}) => ({
  recipe,
  eaters: { counts: [{ group: 'adults', guests }] },
  ...more,
});
const buffet = (event: Event): Event => ({
  ...event,
  courses: event.courses.map((course) => ({ ...course, service: 'shared' })),
});
const say = (event: Event) =>
  coverageProblems(event, coverageOf(event, facts)).map(({ weight, sentence }) => `${weight}: ${sentence}`);
const has = (event: Event) => coverageOf(event, facts).rows.map(({ courses }) => courses[0]!.has);
const ofTen = (dishes: (string | object)[], ...guests: object[]) =>
  party(50, dishes, {
    groups: [{ key: 'adults', name: 'Adults', guests: 50 }],
    guests,
    eatsAll: 50 - guests.reduce((n, one) => n + ((one as { count?: number }).count ?? 1), 0),
  });

describe('plated', () => {
  // 6 pies for 8 vegans: two go without. For 6 they reach, whatever the other 44 eat.
  test('a vegan dish made for 6 feeds 6', () => {
    const pies = [made('stew', 44), made('lentil-pie', 6)];
    expect(say(ofTen(pies, vegans(6)))).toEqual([]);
    expect(has(ofTen(pies, vegans(6)))).toEqual(['yes']);
    expect(say(ofTen(pies, vegans(8)))).toEqual([
      'stop: Lentil pie is made for 6 and 8 need it: 2 go without.',
    ]);
    expect(has(ofTen(pies, vegans(8)))).toEqual(['no']);
  });

  test('who can eat something else leaves the portions to those who cannot', () => {
    const noNuts = guest({ count: 3, diets: ['no-nuts'] });
    expect(say(ofTen([made('stew', 44), made('lentil-pie', 6)], vegans(6), noNuts))).toEqual([]);
  });

  // 6 pies, 8 vegans, of whom 2 might have the mystery if anybody knew what is in it.
  test('what is not known covers nobody, but then it is a question and no stop', () => {
    const event = ofTen([made('mystery', 44), made('lentil-pie', 6)], vegans(8));
    expect(say(event)).toEqual(
      [
        '8 vegan: what is in main is not fully known.',
        'Lentil pie is made for 6 and 8 need it: the others have only what is not fully known.',
      ].map((sentence) => `ask: ${sentence}`),
    );
    expect(has(event)).toEqual(['unknown']);
  });

  test('what may contain it is given only where nothing else reaches', () => {
    const event = ofTen([made('crisps', 44), made('lentil-pie', 1)], guest({ count: 2, diets: ['no-milk'] }));
    expect(has(event)).toEqual(['may']);
  });
});

describe('guests help themselves', () => {
  // Made for 20 of 50, so everybody takes two fifths: 40 others take 16 of them, and 4 are left for 10 vegans.
  test('everybody takes of a dish at the rate it is made for', () => {
    const event = buffet(ofTen(['stew', made('lentil-pie', 20)], vegans(10)));
    expect(say(event)).toEqual([
      'stop: Lentil pie: everybody takes of it, which leaves 4 where 10 need it: 6 go without.',
    ]);
    expect(coveredOf(coverageOf(event, facts).rows[0]!).words).toBe('Main made for too few');
    expect(say(buffet(ofTen(['stew', 'lentil-pie'], vegans(10))))).toEqual([]);
  });

  // Three quarters of a portion are left for one vegan: that part is nobody's want.
  test('less than a portion that is short is no guest who goes without', () => {
    const pies = { recipe: 'lentil-pie', eaters: { shares: [{ group: 'adults', percent: '75' }] } };
    expect(say(buffet(ofTen(['stew', pies], vegans(1))))).toEqual([]);
  });

  test('portions kept for a guest are not taken by others', () => {
    const pies = (more: object) => buffet(ofTen(['stew', made('lentil-pie', 10, more)], vegans(10)));
    expect(say(pies({}))).toHaveLength(1);
    expect(say(pies({ keptFor: ['v'] }))).toEqual([]);
  });

  test('an allergy counts on what is kept apart alone, and the sentence asks how', () => {
    const noMilk = guest({ diets: ['no-milk'] });
    const event = (more: object) => buffet(ofTen([{ recipe: 'hummus', ...more }], noMilk));
    expect(say(event({}))).toEqual([
      'ask: Hummus is served for guests to help themselves: say how Ana’s is kept apart.',
    ]);
    expect(has(event({}))).toEqual(['unknown']);
    expect(coveredOf(coverageOf(event({}), facts).rows[0]!)).toEqual({
      words: 'Main not kept apart',
      loud: true,
    });
    for (const kept of [{ keptApart: 'under foil, own spoon' }, { keptFor: ['ana'] }, { service: 'plated' }])
      expect([say(event(kept)), has(event(kept))]).toEqual([[], ['yes']]);
    expect(has(event({ keptFor: ['bo'] }))).toEqual(['unknown']);
  });

  test('a choice needs nothing kept apart; allergies, medical and unknown diets do', () => {
    const needs = (...diets: string[]) => needsApart({ diets }, facts);
    expect([needs('vegan'), needs('no-pork', 'halal'), needs('pregnancy'), needs()]).toEqual([
      false,
      false,
      false,
      false,
    ]);
    expect([needs('coeliac'), needs('vegan', 'no-nuts'), needs('moonlight')]).toEqual([true, true, true]);
    const course = { service: 'plated' } as const;
    const own = { service: 'shared', keptApart: '', keptFor: [] } as const;
    const served = { ...own, keptFor: [...own.keptFor] };
    expect(countsFor({ key: 'ana', diets: ['coeliac'] }, served, course, facts)).toBe(false);
    expect(countsFor({ key: 'ana', diets: ['vegan'] }, served, course, facts)).toBe(true);
  });
});

test('as JSON a cell says what must be kept apart, and the schema.org name of a diet', () => {
  const event = buffet(ofTen(['hummus'], guest({ diets: ['no-milk', 'vegan'] })));
  const table = allergenMatrixSheet(allergenMatrix(event, facts)).tables.find(
    ({ name }) => name === 'coverage',
  )!;
  expect(table.rows).toMatchObject([
    {
      guest: 'Ana',
      verdict: 'not known',
      apart: 'Hummus is served for guests to help themselves: say how Ana’s is kept apart.',
      restrictedDiet: 'VeganDiet',
    },
  ]);
});
