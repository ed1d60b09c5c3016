import { expect, test } from 'vitest';
import { readComingDay } from '../../src/core/coming-day.js';

// Invented inputs. Wednesday 14 October 2026 is the day on which they are typed.
const today = '2026-10-14';

test('a day to come is read as typed', () => {
  for (const [typed, day] of [
    ['Sat 17 Oct', '2026-10-17'],
    ['17 oct', '2026-10-17'],
    ['today', '2026-10-14'],
    ['Wed 14 Oct', '2026-10-14'],
    ['3 Jan', '2027-01-03'],
    ['2026-12-04', '2026-12-04'],
    // Half a year gone: the next one is meant.
    ['10 March', '2027-03-10'],
    // A Sunday in 2027, so it isn't the Saturday that has just passed.
    ['Sun 10 Oct', '2027-10-10'],
  ] as const)
    expect(readComingDay(typed, today), typed).toEqual({ value: day });
});

test('a day just past is asked about, with the same weekday to come', () => {
  expect(readComingDay('Sat 10 Oct', today)).toEqual({
    past: '2026-10-10',
    guesses: ['2026-10-17', '2026-10-24'],
  });
  expect(readComingDay('10 Oct', today)).toEqual({
    past: '2026-10-10',
    guesses: ['2026-10-17', '2026-10-24', '2027-10-10'],
  });
  expect(readComingDay('10/10/2025', today)).toMatchObject({ past: '2025-10-10' });
  expect(readComingDay('Sat 13 Oct 2026', today)).toMatchObject({ past: '2026-10-13' });
});

test('a weekday that does not fit is asked about', () => {
  expect(readComingDay('Fri 17 Oct', today)).toEqual({
    date: '2026-10-17',
    said: 'fri',
    guesses: ['2026-10-16', '2026-10-17'],
  });
  expect(readComingDay('Tue 15 Oct', today)).toEqual({
    date: '2026-10-15',
    said: 'tue',
    guesses: ['2026-10-15'],
  });
});

test('what is no day says what to type', () => {
  for (const typed of ['', 'soon', '31 Nov', '2026-02-30', 'Sat', '<b>1</b>'])
    expect(readComingDay(typed, today), typed).toHaveProperty('sentence');
});
