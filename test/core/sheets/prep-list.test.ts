import { expect, test } from 'vitest';
import {
  jobsOf,
  prepList,
  prepListSheet,
  shareMakes,
  sumOfDays,
} from '../../../src/core/sheets/prep-list.js';
import { dish, factsOf, food, party, steps } from '../small.js';

const facts = factsOf([
  dish(
    'stew',
    '10 portions, 5 kg',
    ['1 kg leek', 'taste salt', '100 g jar'],
    steps({ minutes: 20, daysAhead: 1 }, { attended: true }),
  ),
  food('leek', { edibleYield: { yield: '0.5' } }),
  food('salt'),
  food('jar', { edibleYield: null }),
]);
const one = party(10, ['stew']);
const two = { ...party(30, ['stew']), key: 'other', name: 'Other' };

// Ten and thirty eat 500 g each: 5 and 15 kg of 20 kg; leeks 1 kg a batch, half of them edible: 4 and 8 kg.
test('a job two events share says how much is for which, and what to weigh out from what is bought', () => {
  const answer = prepList([one, two], facts, '2026-11-27');
  const [job] = jobsOf(answer.value.days);
  expect(job!.makes?.value.toString()).toBe('20000');
  expect(job!.shares.map((share) => shareMakes(job!, share)?.value.toString())).toEqual(['5000', '15000']);
  const { foot, tables } = prepListSheet(answer);
  expect(foot.join(' ')).toMatch(/portion factor.*prepared.*Whole pieces.*exact amount.*days ahead/);
  expect(tables.map(({ name }) => name)).toEqual(['jobs', 'weigh', 'shares']);
  expect(tables[1]!.rows).toMatchObject([
    { amount: '4', amountUnit: 'kg', item: 'Leek', prepared: '4000', bought: '8000', boughtUnit: 'g' },
    { amount: '', item: 'Salt' },
    { amount: '400', item: 'Jar', bought: '' },
  ]);
  expect(tables[2]!.rows.map(({ event, quantity }) => [event, quantity])).toEqual([
    ['Party', '5000'],
    ['Other', '15000'],
  ]);
});

test('a day tells what is open about its own jobs, and what goes in to taste is no question', () => {
  const codes = (date?: string) => prepList([one], facts, date).problems.map(({ code }) => code);
  expect(codes('2026-11-27')).toEqual(['no-yield']);
  expect(codes('2026-11-20')).toEqual([]);
  expect(codes()).toEqual(['no-yield']);
});

test('days add up, and jobs without minutes are told apart', () => {
  const { days } = prepList([one], facts).value;
  expect(days.map(({ date }) => date)).toEqual(['2026-11-27', '2026-11-28']);
  expect(sumOfDays(days)).toEqual({ jobs: 2, attended: 20, untimed: 1 });
});
