import { expect, test } from 'vitest';
import { readPastDay, typedDay } from '../../src/core/reading-days.js';

const today = '2026-12-02';
const value = (text: string) => {
  const read = readPastDay(text, today);
  return 'value' in read ? read.value : read.sentence;
};

test('a day without a year is the last one that has been', () => {
  expect(value('20 Nov')).toBe('2026-11-20');
  expect(value('2 Dec')).toBe('2026-12-02');
  expect(value('3 Dec')).toBe('2025-12-03');
  expect(value('29 Feb')).toBe('2024-02-29');
  expect(value('today')).toBe(today);
});

test('a day still to come is refused with what to type', () => {
  expect(value('3 Dec 2026')).toBe(
    '3 Dec 2026 is still to come. Enter today or a day before, such as 2 Dec 2026.',
  );
  expect(value('tomorrow')).toContain('still to come');
  expect(value('soon')).toContain('Enter the day');
});

test('a day in a field reads back the same', () => {
  for (const date of ['2026-01-31', '2024-02-29', '2026-12-02']) expect(value(typedDay(date))).toBe(date);
});
