import { expect, test } from 'vitest';
import { workbook } from '../../src/core/facts/facts.js';
import { coming, preparedOn } from '../../src/store/coming.js';
import { useKitchen } from './kitchen.js';

const step = (daysAhead: number) => [{ key: 's', words: 'Make it.', daysAhead }];
const event = (key: string, date: string, recipe: string, more: object = {}) => ({
  key,
  name: key,
  date,
  place: 'home',
  state: 'confirmed',
  groups: [{ key: 'all', name: 'All', guests: 10 }],
  courses: [{ key: 'c', name: 'Main', time: '18:00', dishes: [{ key: 'd', recipe }] }],
  ...more,
});

// A cake soaked 60 days ahead in a syrup made 5 days before that: 65 days; a salad on the day.
const kitchen = useKitchen(() =>
  workbook.parse({
    format: 'catering-workbook',
    version: 1,
    kitchen: { name: 'Mill Lane', currency: 'GBP', timeZone: 'Europe/London' },
    places: [{ key: 'home', name: 'Home', kind: 'home' }],
    ingredients: [],
    recipes: [
      {
        key: 'cake',
        name: 'Cake',
        yield: { portions: '10' },
        lines: [{ key: 'l', amount: '1', unit: 'batch', item: { component: 'syrup' } }],
        steps: step(60),
      },
      { key: 'salad', name: 'Salad', yield: { portions: '10' } },
      { key: 'syrup', name: 'Syrup', yield: { portions: '10' }, steps: step(5) },
    ],
    events: [
      event('archived', '2026-06-02', 'salad', { archived: true }),
      event('cake-party', '2026-08-05', 'cake'),
      event('enquiry', '2026-06-02', 'salad', { state: 'enquiry' }),
      event('postponed', '2026-06-03', 'salad', { state: 'postponed' }),
      event('quoted', '2026-06-02', 'salad', { state: 'quoted' }),
      event('salad-party', '2026-06-01', 'salad'),
    ],
  }),
);
const on = (from: string, to = from) => preparedOn(kitchen.db, { from, to });

test('events are prepared on the days that their recipes and all below them allow, and on no day before', async () => {
  expect(await on('2026-06-01')).toEqual(['salad-party', 'cake-party']);
  expect(await on('2026-05-31')).toEqual([]);
  expect(await on('2026-05-28', '2026-06-01')).toEqual(['salad-party', 'cake-party']);
  expect(await on('2026-07-01')).toEqual(['cake-party']);
});

test('the day after a party still has jobs served after midnight; enquiries and what is archived have none', async () => {
  expect(await on('2026-06-02')).toEqual(['salad-party', 'quoted', 'cake-party']);
  expect(await on('2026-06-04')).toEqual(['cake-party']);
});

test('letters go to what is to come, confirmed first', async () => {
  const keys = async (today: string) => (await coming(kitchen.db, today)).map(({ key }) => key);
  expect(await keys('2026-06-01')).toEqual(['salad-party', 'cake-party', 'enquiry', 'quoted']);
  expect(await keys('2026-06-03')).toEqual(['cake-party']);
});
