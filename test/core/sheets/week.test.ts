import { expect, test } from 'vitest';
import { marksFor } from '../../../src/core/marks.js';
import { week } from '../../../src/core/sheets/week.js';
import { dish, factsOf, food, party, steps } from '../small.js';

const facts = factsOf([dish('ham', '10 portions', ['1 kg pork'], steps({ daysAhead: 2 })), food('pork')]);
const on = (key: string, date: string, more: object = {}) =>
  party(10, ['ham'], { key, date, eatsAll: 10, ...more });
const course = (time: string, dayAfter = false) => ({
  key: time.replace(':', '-'),
  name: 'Course',
  time,
  dayAfter,
});

// From Monday the 23rd: Saturday's party is on its day, its ham on Thursday the 26th; a party in December is later.
test('seven days with their parties and jobs, and what comes later', () => {
  const found = week([on('later', '2026-12-05'), on('now', '2026-11-28')], '2026-11-23', facts);
  expect(found.days.map(({ events }) => events.length)).toEqual([0, 0, 0, 0, 0, 1, 0]);
  expect(found.days.map(({ prep }) => prep?.jobs ?? 0)).toEqual([0, 0, 0, 1, 0, 0, 0]);
  expect(found.later.map(({ key }) => key)).toEqual(['later']);
});

test('enquiries are shown and not prepared for; what is over or put off is not shown', () => {
  const found = week(
    [
      on('asked', '2026-11-28', { state: 'enquiry' }),
      on('off', '2026-11-28', { state: 'postponed' }),
      on('gone', '2026-11-28', { state: 'cancelled' }),
      on('old', '2026-11-22'),
    ],
    '2026-11-23',
    facts,
  );
  expect(found.days[5]!.events.map(({ event }) => event.key)).toEqual(['asked']);
  expect(found.days.every(({ prep }) => prep === undefined)).toBe(true);
});

test('the first service is the first of the evening, though another falls after midnight', () => {
  const late = on('late', '2026-11-28', {
    courses: [course('00:30', true), course('19:00'), course('21:00')],
  });
  expect(week([late], '2026-11-28', facts).days[0]!.events[0]!.serve).toBe('19:00');
});

// At midnight the party of the 28th still serves at 00:30 on the 29th.
test('a party is not over while it serves after midnight', () => {
  const soup = dish('soup', '10 portions', ['1 kg pork']);
  const late = on('late', '2026-11-28', {
    courses: [{ ...course('00:30', true), dishes: [{ key: 'd', recipe: 'soup' }] }],
  });
  const [today] = week([late], '2026-11-29', factsOf([soup, food('pork')])).days;
  expect(today!.prep!.jobs).toBe(1);
});

test('the worst is settled first, then the nearest', () => {
  const diet = { eatsAll: 9, guests: [{ key: 'ana', name: 'Ana', group: 'adults', diets: ['vegan'] }] };
  const meat = factsOf([
    dish('ham', '10 portions', ['1 kg pork']),
    food('pork', { traits: { meat: 'yes' } }),
  ]);
  const { settle, days } = week(
    [on('far', '2026-11-28', diet), on('near', '2026-11-27')],
    '2026-11-23',
    meat,
  );
  expect(settle[0]).toMatchObject({
    event: { key: 'far' },
    problem: { code: 'nothing-to-eat', weight: 'stop' },
  });
  expect(settle[1]!.event.key).toBe('near');
  expect(days[5]!.events[0]!.stops).toBe(1);
});

// Confirmed parties by day are A solid, B outline, C hatched, D by letter alone; enquiries and quotes come after, dotted.
test('letters and fills', () => {
  const events = [
    on('d', '2026-12-04'),
    on('a', '2026-12-01'),
    on('c', '2026-12-03'),
    on('b', '2026-12-02'),
    on('quote', '2026-11-30', { state: 'quoted' }),
    on('off', '2026-12-01', { state: 'postponed' }),
    on('past', '2026-11-01'),
  ];
  const marks = marksFor(events, '2026-11-23');
  expect([...marks].map(([key, { letter, fill }]) => `${key} ${letter} ${fill}`)).toEqual([
    'a A solid',
    'b B outline',
    'c C hatch',
    'd D plain',
    'quote E dotted',
  ]);
  const many = Array.from({ length: 28 }, (_, i) => on(`e${String(i).padStart(2, '0')}`, '2026-12-01'));
  expect([...marksFor(many, '2026-11-23').values()].slice(25).map(({ letter }) => letter)).toEqual([
    'Z',
    'AA',
    'AB',
  ]);
});
