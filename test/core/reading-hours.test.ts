import { expect, test } from 'vitest';
import { readHoursWorked } from '../../src/core/reading-hours.js';

test.each([
  ['4', '4'],
  ['4.5 h', '4.5'],
  ['4 1/2', '4.5'],
  ['4:30', '4.5'],
  ['4h30', '4.5'],
  ['0:20', '1/3'],
  ['1 hour', '1'],
  ['2,25 hours', '2.25'],
])('%s is %s hours', (typed, hours) => {
  expect(readHoursWorked(typed)).toEqual({ value: hours });
});

test.each(['', 'all day', '0', '0:00', '4:75'])('%s is asked about', (typed) => {
  expect(readHoursWorked(typed)).toEqual({
    sentence: expect.stringContaining('Enter the hours in figures, such as 4'),
  });
});
