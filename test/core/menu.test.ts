import { expect, test } from 'vitest';
import type { Event } from '../../src/core/facts/event.js';
import { beginAt, copyMenu } from '../../src/core/menu.js';
import { exampleKitchen } from '../world.js';

const { events } = exampleKitchen();
const event = (key: string): Event => events.find((one) => one.key === key)!;
const times = (courses: readonly { time: string; dayAfter: boolean }[]) =>
  courses.map(({ time, dayAfter }) => `${time}${dayAfter ? '+1' : ''}`);

// The lunch is served at 13:00, 13:30 and 14:30: half an hour and an hour apart.
test('courses begin at another time and keep their distance', () => {
  const { courses } = event('retirement-lunch');
  expect(times(beginAt(courses, '19:00'))).toEqual(['19:00', '19:30', '20:30']);
  expect(times(beginAt(courses, '23:15'))).toEqual(['23:15', '23:45', '00:45+1']);
  expect(times(beginAt(beginAt(courses, '23:15'), '13:00'))).toEqual(times(courses));
  expect(beginAt([], '19:00')).toEqual([]);
});

// 8 of 48 adults and 3 of 12 children eat the lentil pie; of 24 adults that is 4, and there are no children.
test('numbers follow their group in proportion, shares and everybody by themselves', () => {
  const [supper] = copyMenu(event('choir-supper'), event('retirement-lunch'));
  expect(supper!.dishes.map(({ eaters }) => eaters)).toEqual([
    { shares: [{ group: 'adults', percent: '75' }] },
    { counts: [{ group: 'adults', guests: 4 }] },
    { counts: [{ group: 'adults', guests: 2 }] },
  ]);
});

// The supper's two courses are served an hour apart; the lunch begins at 13:00, a new event nowhere yet.
test('a copied menu is served when the other event begins', () => {
  const [supper, lunch] = [event('choir-supper'), event('retirement-lunch')];
  const apart = times(supper.courses);
  expect(times(copyMenu(supper, lunch))).toEqual(['13:00', '14:00']);
  expect(times(copyMenu(supper, { ...lunch, courses: [] }))).toEqual(apart);
});
