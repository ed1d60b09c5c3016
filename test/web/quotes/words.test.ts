import { expect, test } from 'vitest';
import { joined } from '../../../src/web/quotes/meanwhile.js';
import { menuText, readMenu } from '../../../src/web/quotes/menu-words.js';

test('a menu reads back as it was written, whatever empty lines stand about', () => {
  const menu = [
    { course: 'Cold table', dishes: ['Salmon', 'Potato & chive salad'] },
    { course: 'Coffee', dishes: [] },
  ];
  expect(readMenu(menuText(menu))).toEqual(menu);
  expect(readMenu('\n\n  Cold table \n Salmon\nPotato & chive salad\n \n\t\n\nCoffee\n')).toEqual(menu);
  expect(readMenu(' \n ')).toEqual([]);
});

test('two changes of a draft are joined place by place; what both changed is named and yours stands', () => {
  const option = (each: string, menu = 'Main') => ({
    key: 'o1',
    name: '',
    menu,
    lines: [{ count: '40', each }],
  });
  const base = { title: 'Party', client: 'Ann', options: [option('20')] };
  const yours = { title: 'Feast', client: 'Ann', options: [option('21')] };
  const theirs = { title: 'Ball', client: 'Ben', options: [option('20', 'Main\nPie')] };
  const { form, places } = joined(base, yours, theirs);
  expect(form).toEqual({ title: 'Feast', client: 'Ben', options: [{ ...option('21', 'Main\nPie') }] });
  expect(places).toEqual([
    { place: 'the party', was: 'Party', yours: 'Feast', theirs: 'Ball' },
    { place: 'for whom', was: 'Ann', yours: null, theirs: 'Ben' },
    { place: 'the menu', was: 'Main', yours: null, theirs: 'Main\nPie' },
  ]);
});

test('where one took a menu out and the other changed it, both are named and nothing is mixed', () => {
  const one = { key: 'o1', name: 'A', menu: 'Main', lines: [] };
  const two = { key: 'o2', name: 'B', menu: 'Pie', lines: [] };
  const { form, places } = joined(
    { options: [one, two] },
    { options: [one] },
    { options: [one, { ...two, menu: 'Tart' }] },
  );
  expect(form).toEqual({ options: [one] });
  expect(places).toMatchObject([{ place: 'menus and prices', yours: 'A Main', theirs: 'A Main; B Tart' }]);
});
