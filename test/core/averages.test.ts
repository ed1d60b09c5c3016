import { expect, test } from 'vitest';
import { eatenAverages, hoursAverages, hoursFrom, hoursOf, shareFrom } from '../../src/core/averages.js';
import { type Event, event } from '../../src/core/facts/event.js';
import { byKey, type Facts } from '../../src/core/facts/facts.js';
import { recipe } from '../../src/core/facts/recipe.js';
import { exampleKitchen } from '../world.js';

const { kitchen } = exampleKitchen();
const pie = recipe.parse({ key: 'pie', name: 'Pie', yield: { portions: '8' } });
const facts: Facts = { kitchen, places: new Map(), ingredients: new Map(), recipes: byKey([pie]) };

type Noted = {
  date: string;
  guests: number;
  came?: number | null;
  left?: string;
  hours?: (string | null)[];
  state?: string;
};

/** Invented: a party with one pie for everybody, and two kinds of hands. */
const party = ({ date, guests, came = guests, left, hours = [], state = 'done' }: Noted): Event =>
  event.parse({
    key: `party-${date}`,
    name: 'Party',
    date,
    place: 'home',
    state,
    groups: [{ key: 'all', name: 'All', guests }],
    courses: [{ key: 'main', name: 'Main', time: '13:00', dishes: [{ key: 'pie', recipe: 'pie' }] }],
    costs: [
      { key: 'cook', name: 'Cooking', kind: 'hands', by: { rate: 1600, hours: 'cooking' } },
      { key: 'serve', name: 'Serving', kind: 'hands', by: { rate: 1300, hours: '4', people: 2 } },
    ],
    afterwards: {
      came: came === null ? [] : [{ group: 'all', guests: came }],
      left: left === undefined ? [] : [{ dish: 'pie', portions: left }],
      spent: ['cook', 'serve'].map((line, i) => ({ line, hours: hours[i] ?? null })),
    },
  });

// 40 made and 10 left, 20 made and none left, 30 made and 5 left: 75 eaten by 90 guests are 5/6, 83.3 per cent.
const three = [
  party({ date: '2026-03-01', guests: 40, left: '10', hours: ['12', '9'] }),
  party({ date: '2026-04-01', guests: 20, left: '0', hours: ['8', '6'] }),
  party({ date: '2026-05-01', guests: 30, left: '5', hours: ['10', null] }),
];

test('portions eaten for each guest who came, over all the last parties, with how many ran out', () => {
  const found = eatenAverages(three, facts).get('pie')!;
  expect(found).toMatchObject({ name: 'Pie', parties: 3, ranOut: 1 });
  expect(found.aGuest.toString()).toBe('5/6');
  expect(shareFrom(found)).toBe(84);
});

test('only the last three count, and only what was noted, of parties that are done', () => {
  const older = party({ date: '2025-12-01', guests: 100, left: '90' });
  const open = party({ date: '2026-06-01', guests: 100, left: '90', state: 'confirmed' });
  const notLeft = party({ date: '2026-06-02', guests: 100 });
  const notCame = party({ date: '2026-06-03', guests: 100, came: null, left: '90' });
  const all = [older, open, notLeft, notCame, ...three];
  expect(eatenAverages(all, facts)).toEqual(eatenAverages(three, facts));
  expect(eatenAverages(all, facts, 4).get('pie')?.parties).toBe(4);
  expect(eatenAverages([open, notLeft, notCame], facts).size).toBe(0);
});

test('more eaten than one portion each is no share of the guests', () => {
  const hungry = party({ date: '2026-03-01', guests: 40, came: 30, left: '0' });
  expect(shareFrom(eatenAverages([hungry], facts).get('pie')!)).toBeUndefined();
});

// Cooking 12, 8 and 10 hours for 40, 20 and 30 are 30 for 90: 10/3 for ten. Serving 15 for 60: 2.5.
// All hands are known at two: 21 and 14 for 60 guests, 35/6 for ten.
test('hours for ten guests, by line and by kind, each with the parties that it rests on', () => {
  const lines = hoursAverages(three, 'line');
  expect(lines.map(({ name, parties, perTen }) => [name, parties, perTen.toString()])).toEqual([
    ['Cooking', 3, '10/3'],
    ['Serving', 2, '2.5'],
  ]);
  const kinds = hoursAverages(three, 'kind');
  expect(kinds.map(({ kind, parties, perTen }) => [kind, parties, perTen.toString()])).toEqual([
    ['hands', 2, '35/6'],
  ]);
  const serving = hoursOf(lines, { kind: 'hands', name: ' SERVING ' })!;
  expect(serving.name).toBe('Serving');
  // 45 guests take 11.25 hours; of each of two 5.625, so 5 3/4.
  expect(hoursFrom(serving, 45, 2).toString()).toBe('5.75');
  expect(hoursOf(lines, { kind: 'hands', name: 'Washing up' })).toBeUndefined();
});
