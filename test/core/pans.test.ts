import { expect, test } from 'vitest';
import { panWords } from '../../src/core/equipment-words.js';
import { kitchen as kitchenFacts } from '../../src/core/facts/kitchen.js';
import { place } from '../../src/core/facts/place.js';
import { step } from '../../src/core/facts/recipe.js';
import { loadsFor, pansFor } from '../../src/core/pans.js';
import { Rational } from '../../src/core/quantity/rational.js';

const kitchen = (pans: object[], ovens: object[] = []) =>
  place.parse({ key: 'home', name: 'Home', kind: 'home', pans, ovens });
const pan = (litres: string, count = 1) => ({ key: `p${litres}`, name: `${litres} L pot`, litres, count });
const boil = step.parse({ key: 's', words: 'Boil.', rings: 1, pan: '2' });

/** Litres, "2 × 10" for each kind of pan, goes. */
const need = (batches: string, pans: object[]) => {
  const found = pansFor(boil, Rational.parse(batches), kitchen(pans))!;
  return [
    found.litres.toString(),
    ...found.pans.map(({ pan, count }) => `${count} × ${pan.litres}`),
    String(found.goes),
  ];
};

test('the fewest pans that hold it, each as small as will do', () => {
  const pans = [pan('4', 2), pan('10'), pan('6')];
  expect(need('2', pans)).toEqual(['4', '1 × 4', '1']);
  expect(need('2.5', pans)).toEqual(['5', '1 × 6', '1']);
  expect(need('5', pans)).toEqual(['10', '1 × 10', '1']);
  expect(need('6', pans)).toEqual(['12', '1 × 10', '1 × 4', '1']);
  expect(need('8', pans)).toEqual(['16', '1 × 10', '1 × 6', '1']);
  expect(need('12', pans)).toEqual(['24', '1 × 10', '1 × 6', '2 × 4', '1']);
});

test('more than all together: in goes of the biggest', () => {
  expect(need('13', [pan('4', 2), pan('10')])).toEqual(['26', '1 × 10', '3']);
  expect(need('13', [pan('4', 3), pan('2')])).toEqual(['26', '3 × 4', '3']);
});

test('no pans, no litres and no batch at all', () => {
  expect(need('3', [])).toEqual(['6', '0']);
  expect(pansFor({ ...boil, pan: null }, Rational.one, kitchen([pan('4')]))).toBeUndefined();
  expect(pansFor(boil, Rational.zero, kitchen([pan('4')]))).toBeUndefined();
});

// 7.5 L are 1.98 US gallons of 3.785411784 L (NIST Handbook 44, Appendix C), 10 L are 2.64: to a quarter, 2 and 2 3/4.
test('a pan is named by litres, or by quarters of a gallon where US measures are shown', () => {
  const found = pansFor(boil, Rational.parse('3.75'), kitchen([pan('10')]))!;
  const settings = { name: 'The kitchen', currency: 'USD', timeZone: 'UTC' };
  expect(panWords(found, kitchenFacts.parse(settings))).toBe('7.50 L in 10 L pot');
  const us = kitchenFacts.parse({ ...settings, units: 'us', cup: 'us' });
  expect(panWords(found, us)).toBe('2 gallons in 10 L pot (2 3/4 gallons)');
});

const bake = step.parse({ key: 's', words: 'Bake.', oven: { heat: 220, tolerance: 10 } });
const oven = (shelves: number, hottest = 250) => ({ key: `o${shelves}`, name: 'Oven', shelves, hottest });

test('shelves in as few loads as the ovens that go to the heat take', () => {
  const two = kitchen([], [oven(3), oven(2, 210), oven(4, 200)]);
  expect(loadsFor(bake, 5, two)).toMatchObject({ room: 5, loads: 1 });
  expect(loadsFor(bake, 6, two)).toMatchObject({ room: 5, loads: 2 });
  expect(loadsFor(bake, 2, kitchen([], [oven(4, 200)]))).toMatchObject({ room: 0, loads: 0 });
  expect(loadsFor(boil, 2, two)).toBeUndefined();
});
