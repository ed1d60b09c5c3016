import { expect, test } from 'vitest';
import type { Facts } from '../../../src/core/facts/facts.js';
import { place } from '../../../src/core/facts/place.js';
import { wholeCost } from '../../../src/core/whole-cost/cost-of-party.js';
import { dish, factsOf, food, home, pack, party, steps } from '../small.js';

const barn = place.parse({ key: 'barn', name: 'The barn', kind: 'venue', drive: 25 });
const far = place.parse({ key: 'far', name: 'The far hall', kind: 'venue' });
const leek = food('leek', pack('1 kg at 240'));

/** A stew of which a batch feeds ten, over half a batch of stock; minutes as they stand. */
const stew = (more: object[] = []) => [
  dish(
    'stew',
    '10 portions',
    ['1 kg leek', '500 ml @stock'],
    steps(
      { minutes: 30 },
      { minutes: 90, attended: false, oven: { heat: 180 }, portionsPerShelf: '8' },
      { minutes: 12, rings: 2 },
      ...more,
    ),
  ),
  dish('stock', '1 l', ['1 kg leek'], steps({ minutes: 20, rings: 1 }, { minutes: 60, attended: false })),
];
const kitchen = (docs = stew(), ways = {}) => factsOf([...docs, leek], ways, [home, barn, far]);

const hoursOf = (hours: string, guests: number, facts: Facts = kitchen(), more: object = {}) => {
  const by = { rate: 1200, hours, ...more };
  const costs = [{ key: 'line', name: 'Work', kind: 'hands', by }];
  const cost = wholeCost(party(guests, ['stew'], { costs, place: 'barn', ...more }), facts, 'used');
  return { ...cost.parts[0]!, problems: cost.problems };
};

// 24 guests are 2.4 batches of stew, 3 begun: 3 × (30 + 12) minutes; of stock 1.2 batches, 2 begun: 2 × 20. Together
// 166 minutes; at 12.00 an hour 33.20.
test('cooking: the minutes somebody stands there, once for every batch begun of a recipe', () => {
  const { hours, exact, complete, people } = hoursOf('cooking', 24);
  expect([hours!.toString(), exact!.toString(), complete, people]).toEqual([
    '83/30',
    '3320',
    true,
    undefined,
  ]);
});

// Twice on the menu for 12 each, stew is made once in 2.4 batches; more people share the work, they don't double it.
test('a recipe is begun for the whole event, whatever dishes it is in, and its work is shared', () => {
  const halves = ['d0', 'd1'].map((key) => ({
    key,
    recipe: 'stew',
    eaters: { shares: [{ group: 'adults', percent: '50' }] },
  }));
  const courses = [{ key: 'main', name: 'Main', time: '18:00', dishes: halves }];
  const by = { rate: 1200, hours: 'cooking', people: 3 };
  const event = party(24, [], { courses, costs: [{ key: 'line', name: 'Work', kind: 'hands', by }] });
  expect(wholeCost(event, kitchen(), 'used').parts[0]!.hours!.toString()).toBe('83/30');
});

// Of 8 portions a shelf, 24 take three; the oven has two shelves: two loads of 90 minutes are 3 hours. 16 are one load.
// Where a shelf's worth isn't said, each of the 3 batches begun is a load.
test('ovens: minutes of each load; rings: minutes of each ring', () => {
  expect([hoursOf('ovens', 24).hours, hoursOf('ovens', 16).hours].map(String)).toEqual(['3', '1.5']);
  const unsaid = stew().map((recipe) => ({
    ...recipe,
    steps: recipe.steps.map((step) => ({ ...step, portionsPerShelf: null })),
  }));
  expect(hoursOf('ovens', 24, kitchen(unsaid)).hours!.toString()).toBe('4.5');
  // 3 × 12 minutes on two rings and 2 × 20 on one are 112 minutes.
  expect(hoursOf('rings', 24).hours!.toString()).toBe('28/15');
});

test('driving: there and back for each who drives, nothing at home, and a drive not stated is asked for', () => {
  expect(hoursOf('driving', 24).exact!.toString()).toBe('1000');
  const two = { place: 'barn', costs: [] };
  const by = { rate: 1200, hours: 'driving', people: 2 };
  const line = { key: 'line', name: 'Work', kind: 'travel', by };
  const drive = (at: string) =>
    wholeCost(party(24, ['stew'], { ...two, place: at, costs: [line] }), kitchen(), 'used');
  expect(drive('barn').parts[0]).toMatchObject({ cost: 2000, people: 2, complete: true });
  expect(drive('home').parts[0]).toMatchObject({ cost: 0, complete: true });
  expect(drive('far').parts[0]).toMatchObject({ complete: false });
  expect(drive('far').problems.map(({ sentence }) => sentence)).toEqual([
    "No drive to The far hall is stated, so the hours of driving can't be counted.",
  ]);
});

test('a recipe without steps, or a step without minutes, leaves the hours open and is named', () => {
  const { hours, complete, problems } = hoursOf('cooking', 24, kitchen(stew([{}, { attended: false }])));
  expect([hours!.toString(), complete]).toEqual(['83/30', false]);
  expect(problems.map(({ sentence }) => sentence)).toEqual([
    'Stew, step 4: no minutes, so the hours of cooking leave it out.',
  ]);
  // Nobody stands at the step without minutes, and no ring is taken by it.
  expect(hoursOf('rings', 24, kitchen(stew([{}]))).complete).toBe(true);

  const bare = stew().map((recipe) => (recipe.key === 'stock' ? { ...recipe, steps: [] } : recipe));
  expect(hoursOf('cooking', 24, kitchen(bare))).toMatchObject({
    complete: false,
    problems: [{ code: 'no-work', sentence: 'Stock has no steps, so the hours of cooking leave it out.' }],
  });
});

test('batches that can not be worked out leave the hours open too', () => {
  const lost = stew().map((recipe) =>
    recipe.key === 'stock' ? dish('stock', '1 kg', ['1 kg leek'], steps({ minutes: 20 })) : recipe,
  );
  const { hours, complete, problems } = hoursOf('cooking', 24, kitchen(lost));
  expect([hours!.toString(), complete]).toEqual(['2.1', false]);
  expect(problems.map(({ code }) => code)).toContain('no-recipe-yield');
});
