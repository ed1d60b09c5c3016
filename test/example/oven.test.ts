import { expect, test } from 'vitest';
import { latestSteps } from '../../src/core/latest.js';
import { ovenAsks, ovenProblems } from '../../src/core/ovens.js';
import { requirementsOf } from '../../src/core/requirements.js';
import { book, facts } from './answers.js';

// At the lunch the chicken wants 200 to 220 °C and the gratin 140 to 160 °C, both in the one oven before 13:30. The
// oil pie takes 190 to 210 °C and could share with the chicken. The supper and the tea ask for one heat at a time.
const found = (key: string) => {
  const event = book.events.find((one) => one.key === key)!;
  const days = latestSteps(event, requirementsOf(event, facts), facts);
  const problems = ovenProblems(event, ovenAsks(event, days, facts), facts);
  return problems.map((problem) => problem.sentence);
};

test('only the lunch asks the oven for two heats at once, and both dishes are named', () => {
  expect(found('birthday-tea')).toEqual([]);
  expect(found('choir-supper')).toEqual([]);
  const lunch = found('retirement-lunch').join(' ');
  for (const words of ['Celeriac and potato gratin', '150', 'Chicken thighs with lemon and thyme', '210'])
    expect(lunch).toContain(words);
});
