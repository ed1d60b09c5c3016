import { expect, test } from 'vitest';
import { byKey, type Facts } from '../../src/core/facts/facts.js';
import { firstCourse, leaveKitchen } from '../../src/core/service.js';
import { exampleKitchen } from '../world.js';

const { kitchen, places, ingredients, recipes, events } = exampleKitchen();
const facts: Facts = {
  kitchen,
  places: byKey(places),
  ingredients: byKey(ingredients),
  recipes: byKey(recipes),
};
const supper = events.find(({ key }) => key === 'choir-supper')!;

// The hall is 20 minutes away and supper is at 19:30, so the van leaves at 19:10: 1150 minutes after midnight.
test('the van leaves a drive before the first service', () => {
  expect(firstCourse(supper)?.name).toBe('Supper');
  expect(leaveKitchen(supper, facts)).toBe(1150);
  const late = { ...supper, courses: supper.courses.map((course) => ({ ...course, dayAfter: true })) };
  expect(leaveKitchen(late, facts)).toBe(1150 + 1440);
});

test('nothing is said at home, without courses or without a stated drive', () => {
  expect(leaveKitchen({ ...supper, place: 'home' }, facts)).toBeUndefined();
  expect(leaveKitchen({ ...supper, courses: [] }, facts)).toBeUndefined();
  const hall = { ...facts.places.get(supper.place)!, drive: null };
  expect(leaveKitchen(supper, { ...facts, places: byKey([hall]) })).toBeUndefined();
});
