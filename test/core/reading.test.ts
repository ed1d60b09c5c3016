import { describe, expect, test } from 'vitest';
import { readClock, readDay, readMoney, readPercent, readWhole } from '../../src/core/reading.js';

// Invented inputs: ways of writing that cooks use, common practice, no source.
describe('a day, a time, a price and a number as people type them', () => {
  test('times of day', () => {
    for (const [typed, clock] of [
      ['18:30', '18:30'],
      ['1830', '18:30'],
      ['6.30pm', '18:30'],
      ['4.30 pm', '16:30'],
      ['7pm', '19:00'],
      ['12 am', '00:00'],
      ['12pm', '12:00'],
      ['noon', '12:00'],
      ['9', '09:00'],
    ] as const)
      expect(readClock(typed), typed).toEqual({ value: clock });
    for (const typed of ['', '25:00', '18:60', '13pm', 'later', '-3'])
      expect(readClock(typed), typed).toHaveProperty('sentence');
  });

  test('days, the next such day when no year is said', () => {
    const today = '2026-12-02';
    for (const [typed, day] of [
      ['2026-12-04', '2026-12-04'],
      ['4 Dec', '2026-12-04'],
      ['Fri 4 December 2026', '2026-12-04'],
      ['Dec 4th, 2026', '2026-12-04'],
      ['4/12/2026', '2026-12-04'],
      ['1 Dec', '2027-12-01'],
      ['29 Feb', '2028-02-29'],
      ['tomorrow', '2026-12-03'],
    ] as const)
      expect(readDay(typed, today), typed).toEqual({ value: day });
    for (const typed of ['', '31 Nov 2026', '2026-02-30', 'soon', '40 Dec'])
      expect(readDay(typed, today), typed).toHaveProperty('sentence');
  });

  test('prices in minor units by ISO 4217 digits', () => {
    expect(readMoney('3.40', 'GBP')).toEqual({ value: 340 });
    expect(readMoney('£ 1196', 'GBP')).toEqual({ value: 119600 });
    expect(readMoney('3,40', 'EUR')).toEqual({ value: 340 });
    expect(readMoney('340', 'JPY')).toEqual({ value: 340 });
    expect(readMoney('1.250', 'KWD')).toEqual({ value: 1250 });
    for (const [typed, currency] of [
      ['3.405', 'GBP'],
      ['3.4', 'JPY'],
      ['-2', 'GBP'],
      ['', 'GBP'],
      ['cheap', 'GBP'],
      ['1,000', 'GBP'],
    ] as const)
      expect(readMoney(typed, currency), typed).toHaveProperty('sentence');
  });

  test('a slipped decimal is guessed at', () => {
    expect(readPercent('720', 'trim yield')).toEqual({
      sentence: 'Trim yield must be between 0 and 100. You entered 720. Did you mean 72?',
    });
    expect(readPercent('12.5 %', 'over-catering')).toEqual({ value: '12.5' });
  });

  test('head-counts', () => {
    expect(readWhole('46', 'the number of guests', 0, 5000)).toEqual({ value: 46 });
    expect(readWhole('1,200', 'the number of guests', 0, 5000)).toEqual({ value: 1200 });
    expect(readWhole('forty or so', 'the number of guests', 0, 5000)).toEqual({
      sentence: 'Enter the number of guests in figures, such as 40.',
    });
    for (const typed of ['-4', '4.5', '', '99999'])
      expect(readWhole(typed, 'guests', 0, 5000)).toHaveProperty('sentence');
  });
});
