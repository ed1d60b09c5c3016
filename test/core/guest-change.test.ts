import { expect, test } from 'vitest';
import { byKey, type Facts } from '../../src/core/facts/facts.js';
import { guestChange } from '../../src/core/guest-change.js';
import { exampleKitchen } from '../world.js';

const { kitchen, places, ingredients, recipes, events } = exampleKitchen();
const facts: Facts = {
  kitchen,
  places: byKey(places),
  ingredients: byKey(ingredients),
  recipes: byKey(recipes),
};
const supper = events.find(({ key }) => key === 'choir-supper')!;
const at = (adults: number) => guestChange(supper, new Map([['adults', adults]]), facts);

// 75 % of 48 adults and of 12 children at a half are 40.5 portions of stew; of 52 adults they are 43.5.
test('dishes by share follow the head-count, dishes by number stay', () => {
  const { dishes, before, after, more, problems } = at(52);
  const [stew, pie] = dishes;
  expect(stew!.before.need.portions.toString()).toBe('40.5');
  expect(stew!.after.need.portions.toString()).toBe('43.5');
  expect(stew!.setByNumber).toBe(false);
  expect(pie!.setByNumber).toBe(true);
  expect(pie!.more).toBe(0);
  expect(after.cost.guests).toBe(64);
  expect(before.event.groups[0]!.guests).toBe(48);
  expect(dishes.every((dish) => dish.more !== undefined)).toBe(before.cost.complete);
  if (more !== undefined) expect(more).toBe(after.cost.total - before.cost.total);
  expect(problems.filter(({ isNew }) => isNew).map(({ problem }) => problem.code)).toContain('not-answered');
});

test('fewer guests than a dish is set for, and than answers stand, are said and nothing is lost', () => {
  const { dishes, after, problems } = at(40);
  const crumble = dishes.find(({ before }) => before.need.recipe.key === 'apple-crumble')!;
  expect(crumble.overset).toEqual([{ name: 'Adults', set: 43, guests: 40 }]);
  expect(problems.map(({ problem }) => problem.code)).toContain('too-many-answers');
  expect(after.event.guests).toEqual(supper.guests);
});

test('no change changes nothing', () => {
  const { more, problems, dishes } = at(48);
  expect(problems.filter(({ isNew }) => isNew)).toEqual([]);
  expect(more === undefined || more === 0).toBe(true);
  expect(dishes.map(({ batches }) => batches?.toString())).toEqual(dishes.map(() => '0'));
});
