import { describe, expect, test } from 'vitest';
import { daysAheadOf } from '../../src/core/due.js';
import type { Event } from '../../src/core/facts/event.js';
import type { Facts } from '../../src/core/facts/facts.js';
import { prepFor } from '../../src/core/prep.js';
import { dish, factsOf, food, party, steps } from './small.js';

const jobsOf = (events: Event[], facts: Facts) =>
  prepFor(events, facts).value.flatMap(({ stations }) => stations.flatMap(({ jobs }) => jobs));
const dated = (events: Event[], facts: Facts) =>
  jobsOf(events, facts)
    .map(({ date, recipe, step }) => `${date} ${recipe.key} ${step?.key}`)
    .sort();
const base = [
  dish('pie', '12 portions', ['3 kg @ragu'], steps({ daysAhead: 1 }, { daysAhead: 0 })),
  dish('ragu', '4 kg', ['600 ml @sauce'], steps({ daysAhead: 1 })),
  dish('sauce', '2 l', ['500 ml @stock'], steps({ daysAhead: 0 })),
  dish('stock', '3 l', ['8 kg bones'], steps({ daysAhead: 2 })),
  food('bones'),
];

// Served on Saturday the 28th, the pie is filled on Friday; its ragù is made the day before, Thursday; the sauce the same
// day; its stock two days before that, Tuesday the 24th.
test('components count back from what uses them, three deep', () => {
  expect(dated([party(12, ['pie'])], factsOf(base))).toEqual([
    '2026-11-24 stock s0',
    '2026-11-26 ragu s0',
    '2026-11-26 sauce s0',
    '2026-11-27 pie s0',
    '2026-11-28 pie s1',
  ]);
});

// A soup of the same stock, made on the day, could have its stock on the 26th: one event makes it once, on the 24th. For
// 12 guests the pie takes 3/4 × 0.6/2 × 0.5/3 = 0.0375 batch of stock and the soup, of 1.5 l, half a batch: 0.5375.
test('a component with two users is made once, for the first', () => {
  const soup = dish('soup', '12 portions', ['1.5 l @stock'], steps({ daysAhead: 0 }));
  const facts = factsOf([...base, soup]);
  const stock = jobsOf([party(12, ['pie', 'soup'])], facts).filter(({ recipe }) => recipe.key === 'stock');
  expect(stock.map(({ date, batches }) => `${date} ${batches}`)).toEqual(['2026-11-24 0.5375']);
  expect(stock[0]!.lines[0]!.bought!.value.toString()).toBe('4300'); // 8 kg × 0.5375
});

describe('over the ends of months and years, the leap day, and nights the clock changes', () => {
  const facts = factsOf([dish('ham', '10 portions', ['1 kg pork'], steps({ daysAhead: 3 })), food('pork')]);
  test.each([
    ['2026-12-02', '2026-11-29'],
    ['2027-01-01', '2026-12-29'],
    ['2028-03-02', '2028-02-28'],
    ['2026-03-30', '2026-03-27'],
    ['2026-10-26', '2026-10-23'],
    ['2026-11-02', '2026-10-30'],
  ])('served on %s, salted on %s', (date, salted) => {
    for (const timeZone of ['Europe/London', 'America/New_York']) {
      const kitchen = { ...facts.kitchen, timeZone };
      expect(dated([party(10, ['ham'], { date })], { ...facts, kitchen })).toEqual([`${salted} ham s0`]);
    }
  });
});

test('a course after midnight is of the day after', () => {
  const facts = factsOf([dish('ham', '10 portions', ['1 kg pork'], steps({ daysAhead: 1 })), food('pork')]);
  const late = party(10, ['ham']);
  const courses = late.courses.map((course) => ({ ...course, time: '00:30', dayAfter: true }));
  expect(dated([{ ...late, courses }], facts)).toEqual(['2026-11-28 ham s0']);
});

// Dough (2 days ahead) is chilled (1 day ahead); the sauce comes after the dough by its own word and may wait for the day.
test('a step is no later than what follows it, by what it says and not by where it stands', () => {
  const after = [{ step: 's0' }];
  const tart = dish('tart', '1 portion', [], steps({}, { after }, { after, daysAhead: 1 }));
  expect(daysAheadOf(tart)).toEqual([1, 0, 1]);
  expect(daysAheadOf(dish('pie', '1 portion', [], steps({}, {}, { daysAhead: 2 }, {})))).toEqual([
    2, 2, 2, 0,
  ]);
});
