import { expect, test } from 'vitest';
import {
  addDays,
  backFrom,
  clockOf,
  daysBetween,
  localTime,
  minutesOf,
  mondayOf,
  weekdayOf,
  weekOf,
} from '../../../src/core/calendar.js';

// The Gregorian calendar: 2028 is a leap year, 2026 and 2100 are not.
test('days over the ends of months and years and the leap day', () => {
  expect(addDays('2026-12-01', -1)).toBe('2026-11-30');
  expect(addDays('2026-01-01', -3)).toBe('2025-12-29');
  expect(addDays('2028-03-01', -1)).toBe('2028-02-29');
  expect(addDays('2026-03-01', -1)).toBe('2026-02-28');
  expect(addDays('2100-02-28', 1)).toBe('2100-03-01');
  expect(addDays('2026-11-28', 0)).toBe('2026-11-28');
  expect(() => addDays('no day', 1)).toThrow(RangeError);
});

// Europe/London 2026: clocks go on on 29 March and back on 25 October; America/New_York: 8 March and 1 November.
test('days on which the clock changes are days like any other', () => {
  for (const day of ['2026-03-29', '2026-10-25', '2026-03-08', '2026-11-01']) {
    expect(addDays(addDays(day, -1), 1)).toBe(day);
    expect(daysBetween(addDays(day, -1), addDays(day, 1))).toBe(2);
  }
});

// ISO 8601: 28 December is always in the last week; week 1 holds 4 January.
test('weekdays, Mondays and ISO week numbers', () => {
  expect([weekdayOf('2026-11-28'), weekdayOf('2028-02-29')]).toEqual(['sat', 'tue']);
  expect(['2026-12-28', '2027-01-03', '2027-01-04'].map(weekOf)).toEqual([53, 53, 1]);
  expect(['2026-11-23', '2026-11-28', '2026-11-29'].map(mondayOf)).toEqual(Array(3).fill('2026-11-23'));
});

// By the library temporal-polyfill: 2026-10-25 01:30 in London happens twice, at 00:30 and at 01:30 UTC, and 2026-03-29
// 01:30 does not happen: the minute after 00:59 is 02:00.
test('the kitchen’s clock on the nights it changes', () => {
  const london = (utc: string) => localTime(Date.parse(utc), 'Europe/London');
  expect(london('2026-10-25T00:30Z')).toEqual({ date: '2026-10-25', time: '01:30' });
  expect(london('2026-10-25T01:30Z')).toEqual({ date: '2026-10-25', time: '01:30' });
  expect(london('2026-03-29T00:59Z').time).toBe('00:59');
  expect(london('2026-03-29T01:00Z').time).toBe('02:00');
  // 12 h from 22:00 on the 24th is 09:00 on the 25th in London.
  expect(london('2026-10-25T09:00Z')).toEqual({ date: '2026-10-25', time: '09:00' });
  expect(localTime(Date.parse('2027-03-14T04:00Z'), 'America/New_York')).toEqual({
    date: '2027-03-13',
    time: '23:00',
  });
});

// By the library temporal-polyfill, where the clock goes back on 25 October 2026 and on on 29 March 2026 (London) and on
// 14 March 2027 (New York): 12 h back from 10:00 are 23:00 the day before, 8 h back from 07:00 are 22:00, from 08:00
// 23:00; and 12 h before 09:00 on the 25th are 22:00.
test('lengths of time over the nights on which the clock changes', () => {
  const before = (date: string, time: string, hours: number, zone: string) => {
    const minutes = backFrom(date, zone)(minutesOf(time), hours * 60);
    return `${addDays(date, Math.floor(minutes / 1440))} ${clockOf(minutes)}`;
  };
  expect(before('2026-10-25', '10:00', 12, 'Europe/London')).toBe('2026-10-24 23:00');
  expect(before('2026-10-25', '09:00', 12, 'Europe/London')).toBe('2026-10-24 22:00');
  expect(before('2026-03-29', '07:00', 8, 'Europe/London')).toBe('2026-03-28 22:00');
  expect(before('2027-03-14', '08:00', 8, 'America/New_York')).toBe('2027-03-13 23:00');
  expect(before('2026-11-28', '18:00', 30, 'Europe/London')).toBe('2026-11-27 12:00');
  expect(before('2026-11-28', '18:00', 0, 'Europe/London')).toBe('2026-11-28 18:00');
});

test('minutes from midnight and the clock they show, on whatever day', () => {
  expect([minutesOf('00:30'), minutesOf('23:59')]).toEqual([30, 1439]);
  expect([clockOf(-60), clockOf(0), clockOf(1470), clockOf(2880)]).toEqual([
    '23:00',
    '00:00',
    '00:30',
    '00:00',
  ]);
});
