import { expect, test } from 'vitest';
import { clockOf } from '../../src/core/calendar.js';
import type { Event } from '../../src/core/facts/event.js';
import type { Facts } from '../../src/core/facts/facts.js';
import { place } from '../../src/core/facts/place.js';
import { driveProblems, latestSteps } from '../../src/core/latest.js';
import { requirementsOf } from '../../src/core/requirements.js';
import { dish, factsOf, food, home, party, steps } from './small.js';

const hall = place.parse({ key: 'hall', name: 'The hall', kind: 'venue', drive: 20 });
const work = (event: Event, facts: Facts) => latestSteps(event, requirementsOf(event, facts), facts);
const clock = (event: Event, facts: Facts) =>
  work(event, facts).flatMap((one) =>
    one.steps.map(
      ({ need, step, start, end }) => `${need.recipe.key} ${step.key} ${clockOf(start)}–${clockOf(end)}`,
    ),
  );
const starts = (event: Event, facts: Facts) => work(event, facts).map(({ start }) => start && clockOf(start));
const one = (list: object[], places = [home, hall]) =>
  factsOf([dish('pie', '10 portions', ['1 kg leek'], steps(...list)), food('leek')], {}, places);

// Served at 18:00: 30 minutes in the oven from 17:30, 20 minutes of filling from 17:10.
test('backwards from the service through the steps', () => {
  const facts = one([{ minutes: 20 }, { minutes: 30 }]);
  expect(clock(party(10, ['pie']), facts)).toEqual(['pie s0 17:10–17:30', 'pie s1 17:30–18:00']);
  expect(starts(party(10, ['pie']), facts)).toEqual(['17:10']);
});

// Dough, then two things that come after it: 40 minutes of rest, and 15 of filling at least 30 minutes after it.
test('a step ends before each of those that come after it, with the least gap between', () => {
  const facts = one([
    { minutes: 5 },
    { minutes: 40, after: [{ step: 's0' }] },
    { minutes: 15, after: [{ step: 's0', least: 30 }] },
  ]);
  expect(clock(party(10, ['pie']), facts)).toEqual([
    'pie s0 17:10–17:15',
    'pie s1 17:20–18:00',
    'pie s2 17:45–18:00',
  ]);
});

// At the hall, 20 minutes away: the pie leaves the oven at home by 17:40; what is warmed at the hall may end at 18:00,
// and then the drive lies before the warming: baked by 17:30 − 20 = 17:10.
test('work at home ends before the drive, work at the venue at service', () => {
  const away = party(10, ['pie'], { place: 'hall' });
  expect(clock(away, one([{ minutes: 30 }]))).toEqual(['pie s0 17:10–17:40']);
  expect(clock(away, one([{ minutes: 30, where: 'either' }]))).toEqual(['pie s0 17:10–17:40']);
  const warmed = one([{ minutes: 30 }, { minutes: 30, where: 'venue' }]);
  expect(clock(away, warmed)).toEqual(['pie s0 16:40–17:10', 'pie s1 17:30–18:00']);
  expect(clock(party(10, ['pie']), warmed)).toEqual(['pie s0 17:00–17:30', 'pie s1 17:30–18:00']);
});

test('a venue without a stated drive is asked about, not counted next door in silence', () => {
  const near = place.parse({ ...hall, drive: null });
  const facts = one([{ minutes: 30 }], [home, near]);
  const away = party(10, ['pie'], { place: 'hall' });
  expect(clock(away, facts)).toEqual(['pie s0 17:30–18:00']);
  expect(driveProblems(away, work(away, facts), facts).map(({ sentence }) => sentence)).toEqual([
    'No drive to The hall is stated, so the times to start leave none.',
  ]);
  const there = one([{ minutes: 30, where: 'venue' }], [home, near]);
  expect(driveProblems(away, work(away, there), there)).toEqual([]);
  expect(driveProblems(party(10, ['pie']), work(party(10, ['pie']), facts), facts)).toEqual([]);
});

// A sauce of 25 minutes goes into a pie whose first step starts at 17:10.
test('a component is ready when what uses it starts; made the day before, it is no work of the day', () => {
  const facts = (more: object) =>
    factsOf([
      dish('pie', '10 portions', ['1 l @sauce'], steps({ minutes: 50, ...more })),
      dish('sauce', '1 l', ['1 kg leek'], steps({ minutes: 25 })),
      food('leek'),
    ]);
  expect(clock(party(10, ['pie']), facts({}))).toEqual(['pie s0 17:10–18:00', 'sauce s0 16:45–17:10']);
  expect(clock(party(10, ['pie']), facts({ daysAhead: 1 }))).toEqual([]);
  expect(starts(party(10, ['pie']), facts({ daysAhead: 1 }))).toEqual([undefined]);
});

// The filling is made on the day before; the pie is baked on the day: it starts with the baking.
test('a dish with part of it made the day before still has its start', () => {
  const facts = factsOf([
    dish('pie', '10 portions', ['1 l @sauce'], steps({ minutes: 10, daysAhead: 1 }, { minutes: 30 })),
    dish('sauce', '1 l', ['1 kg leek'], steps({ minutes: 25 })),
    food('leek'),
  ]);
  expect(starts(party(10, ['pie']), facts)).toEqual(['17:30']);
});

test('a step without minutes leaves the start of its dish open, and what comes before it', () => {
  const facts = one([{ minutes: 20 }, {}, { minutes: 10 }]);
  expect(clock(party(10, ['pie']), facts)).toEqual(['pie s2 17:50–18:00']);
  expect(starts(party(10, ['pie']), facts)).toEqual([undefined]);
});

// 00:30 on the day after is 1470 minutes from midnight of the event's day; 40 minutes before it is 23:50.
test('a course after midnight counts from the day of the event', () => {
  const event = party(10, ['pie']);
  const courses = event.courses.map((course) => ({ ...course, time: '00:30', dayAfter: true }));
  const [day] = work({ ...event, courses }, one([{ minutes: 40 }]));
  expect([day!.steps[0]!.start, clockOf(day!.start!)]).toEqual([1430, '23:50']);
});

// A shoulder roasts 8 h for 07:00 on the morning of 29 March 2026, when London's clock goes on at 01:00: from 22:00.
test('a night on which the clock goes on takes an hour from the evening before', () => {
  const event = party(10, ['pie'], { date: '2026-03-29' });
  const courses = event.courses.map((course) => ({ ...course, time: '07:00' }));
  expect(clock({ ...event, courses }, one([{ minutes: 480 }]))).toEqual(['pie s0 22:00–07:00']);
});
