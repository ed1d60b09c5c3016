import { expect, test } from 'vitest';
import { passList } from '../../../src/core/sheets/pass-list.js';
import { passListSheet } from '../../../src/core/sheets/pass-list-sheet.js';
import { dish, factsOf, food, labelled, party } from '../small.js';

// Invented. Of the pie (milk) and the squash (nothing on the list, whole label read) Ana, who has no milk and sits at
// table 3, gets the squash and not the pie; it is a buffet, so her portion must be kept apart, and it is: on the second
// tray. Bo (table 12, no milk too) is named for the crumble. The relish was never read, so nobody with an allergy gets
// it. Cy has not answered. Dot eats everything and is not on the list.
const facts = factsOf([
  dish('pie', '10 portions', ['1 kg butter']),
  dish('squash', '10 portions', ['1 kg gourd']),
  dish('relish-plate', '10 portions', ['1 kg relish']),
  dish('crumble', '10 portions', ['1 kg oats']),
  food('butter', labelled({ contains: ['milk'] })),
  food('gourd', labelled()),
  food('relish'),
  food('oats', labelled({ contains: ['oats'], may: ['milk'] })),
]);
const guest = (key: string, more: object) => ({ key, name: key, group: 'adults', ...more });
const event = party(10, [], {
  eatsAll: 6,
  guests: [
    guest('Bo', { table: '12', diets: ['no-milk'] }),
    guest('Cy', { answered: false }),
    guest('Ana', { table: '3', diets: ['no-milk'] }),
    guest('Dot', { table: '3' }),
  ].map((one) => ({ ...one, key: one.key.toLowerCase() })),
  courses: [
    {
      key: 'main',
      name: 'Main',
      time: '18:00',
      service: 'shared',
      dishes: [
        { key: 'pie', recipe: 'pie' },
        { key: 'squash', recipe: 'squash', keptApart: 'second tray' },
        { key: 'relish', recipe: 'relish-plate' },
      ],
    },
    {
      key: 'pudding',
      name: 'Pudding',
      time: '19:30',
      dishes: [{ key: 'crumble', recipe: 'crumble', keptFor: ['bo'] }],
    },
  ],
});
const rows = passListSheet(passList(event, facts)).tables[0]!.rows;
const at = (guestName: string, course: string) =>
  rows.find((row) => row.guest === guestName && row.course === course)!;

test('table 3, Ana: no milk, gets the squash kept back on the second tray, not the pie', () => {
  expect(at('Ana', 'Main')).toEqual({
    course: 'Main',
    time: '18:00',
    atTable: '3',
    guest: 'Ana',
    count: '1',
    diets: 'no milk',
    gets: 'Squash (kept back: second tray)',
    may: '',
    others: '',
    not: 'Pie (Butter)',
    open: 'Relish plate (Relish)',
    settle: '',
  });
});

test('what only may contain it is said apart, with what it comes through; nothing is given as a yes', () => {
  expect(at('Bo', 'Pudding')).toMatchObject({
    gets: '',
    may: 'Crumble (kept back: by name), Oats',
    settle: 'Only what may contain it: ask them first.',
  });
});

test('tables stand in the order of their numbers, without a table last; who eats everything is not on it', () => {
  expect(rows.filter(({ course }) => course === 'Main').map((row) => row.guest)).toEqual(['Ana', 'Bo', 'Cy']);
  const { value } = passList(event, facts);
  expect([value.guests, value.withDiets, value.notAnswered, value.notListed]).toEqual([10, 2, 1, 0]);
});

test('who has not answered gets nothing as a yes, and is to be asked', () => {
  expect(at('Cy', 'Main')).toMatchObject({ gets: '', settle: 'Has not answered: ask before serving.' });
});

test('portions kept back are counted, with whose they are and how', () => {
  expect(passListSheet(passList(event, facts)).tables[1]!.rows).toEqual([
    { course: 'Main', dish: 'Squash', portions: '2', for: 'Bo; Ana', how: 'second tray' },
    { course: 'Pudding', dish: 'Crumble', portions: '1', for: 'Bo', how: 'by name' },
  ]);
});

test('a buffet dish that nobody keeps apart goes to nobody with an allergy', () => {
  const [main, pudding] = event.courses;
  const open = {
    ...event,
    courses: [{ ...main!, dishes: main!.dishes.map((one) => ({ ...one, keptApart: '' })) }, pudding!],
  };
  const { tables } = passListSheet(passList(open, facts));
  expect(tables[0]!.rows[0]).toMatchObject({
    guest: 'Ana',
    gets: '',
    open: 'Squash; Relish plate (Relish)',
    settle: 'Say how their portion is kept apart.',
  });
});

test('a guest with nothing in a course is said to have nothing', () => {
  const butterOnly = {
    ...event,
    courses: [{ ...event.courses[0]!, dishes: event.courses[0]!.dishes.slice(0, 1) }],
  };
  expect(passListSheet(passList(butterOnly, facts)).tables[0]!.rows[0]!.settle).toBe(
    'Nothing here for them.',
  );
});

test('the foot says that it stays in the kitchen', () => {
  expect(passListSheet(passList(event, facts)).foot.join(' ')).toMatch(/keep this sheet in the kitchen/);
});

// The squash is made for one adult alone, and Ana and Bo both need it: one of them goes without, and both rows say so.
test('portions that do not reach are said beside every guest who needs them', () => {
  const few = structuredClone(event);
  few.courses[0]!.dishes = [
    {
      ...few.courses[0]!.dishes[1]!,
      eaters: { counts: [{ group: 'adults', guests: 1 }] },
      service: 'plated',
    },
  ];
  const said = passListSheet(passList(few, facts)).tables[0]!.rows.map(({ guest, settle }) => [
    guest,
    settle,
  ]);
  expect(said.slice(0, 2)).toEqual([
    ['Ana', 'Squash is made for 1 adults and 2 adults need it: 1 goes without.'],
    ['Bo', 'Squash is made for 1 adults and 2 adults need it: 1 goes without.'],
  ]);
});
