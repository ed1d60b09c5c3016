import { describe, expect, test } from 'vitest';
import { allergenList, allergensOf, stateOf, ways } from '../../src/core/allergens.js';
import type { Facts } from '../../src/core/facts/facts.js';
import { unreadIn } from '../../src/core/sheets/allergen-matrix.js';
import { dish, factsOf, food, labelled } from './small.js';

const cell = (facts: Facts, recipe: string, id: string) =>
  allergensOf(facts.recipes.get(recipe)!, facts).find(({ item }) => item.id === id)!;
const paths = (facts: Facts, recipe: string, id: string) =>
  cell(facts, recipe, id).brings.map(
    ({ ingredient, state, through }) =>
      `${ingredient.key} ${state}: ${through.map((one) => one.key).join(' > ')}`,
  );

// A soup is finished with a garnish, which holds a pesto of pine nuts and cheese: pine nut and milk reach the soup
// through two components. Without the garnish both are gone from it.
test('a garnish brings pine nut and milk two components deep; without it the soup is clear', () => {
  const foods = [
    food('leek', labelled()),
    food('pine-nut', labelled({ contains: ['pine-nut'] })),
    food('cheese', labelled({ contains: ['milk'] })),
  ];
  const kitchen = (soup: string[]) =>
    factsOf(
      [
        dish('soup', '1 portion', soup),
        dish('garnish', '1 portion', ['1 portion @pesto']),
        dish('pesto', '1 portion', ['1 g pine-nut', '1 g cheese']),
        ...foods,
      ],
      { allergenList: 'anz' },
    );
  const garnished = kitchen(['1 g leek', '1 portion @garnish']);
  expect(paths(garnished, 'soup', 'pine-nut')).toEqual(['pine-nut contains: soup > garnish > pesto']);
  expect(paths(garnished, 'soup', 'milk')).toEqual(['cheese contains: soup > garnish > pesto']);
  const plain = kitchen(['1 g leek']);
  expect([cell(plain, 'soup', 'pine-nut').state, cell(plain, 'soup', 'milk').state]).toEqual([
    'free',
    'free',
  ]);
});

// "Vegetable stock" bought in tells nothing by its name. While no label is read all fourteen are not known.
test('a bought sauce without a read label is not known in any respect', () => {
  const facts = factsOf([dish('soup', '1 portion', ['1 g vegetable-stock']), food('vegetable-stock')]);
  const cells = allergensOf(facts.recipes.get('soup')!, facts);
  expect(cells).toHaveLength(14);
  for (const { state, unknown } of cells) expect([state, unknown]).toEqual(['unknown', true]);
});

// Pesto comes into the plate by the soup and by the toast: both ways are named, so that leaving out one is seen as such.
test('every way in is named, though a component comes in twice', () => {
  const facts = factsOf([
    dish('plate', '1 portion', ['1 portion @soup', '1 portion @toast', '1 g cheese']),
    dish('soup', '1 portion', ['1 portion @pesto']),
    dish('toast', '1 portion', ['1 portion @pesto']),
    dish('pesto', '1 portion', ['1 g cheese', '2 g cheese']),
    food('cheese', labelled({ contains: ['milk'] })),
  ]);
  expect(paths(facts, 'plate', 'milk')).toEqual([
    'cheese contains: plate > soup > pesto',
    'cheese contains: plate > toast > pesto',
    'cheese contains: plate',
  ]);
});

test('a recipe without lines is not known, alone and inside another', () => {
  const facts = factsOf([
    dish('bought-cake', '1 portion', []),
    dish('plate', '1 portion', ['1 portion @bought-cake', '1 g leek']),
    food('leek', labelled()),
  ]);
  for (const recipe of ['bought-cake', 'plate'])
    expect(cell(facts, recipe, 'milk')).toMatchObject({ state: 'unknown', unknown: true });
});

describe('what is known of one ingredient', () => {
  const eu = (id: string) => allergenList('eu').items.find((item) => item.id === id)!.members;
  const anz = (id: string) => allergenList('anz').items.find((item) => item.id === id)!.members;
  const ca = (id: string) => allergenList('ca').items.find((item) => item.id === id)!.members;
  const said = (allergens: object) => food('food', { allergens });

  test('contains beats may contain beats not known beats free, and what is not known stays visible', () => {
    const nuts = { almond: { state: 'may' }, hazelnut: { state: 'free' } };
    expect(stateOf(said(nuts), eu('nuts'))).toEqual({ state: 'may', unknown: true });
    expect(stateOf(said({ ...nuts, walnut: { state: 'contains' } }), eu('nuts'))).toMatchObject({
      state: 'contains',
    });
    expect(stateOf(said({ hazelnut: { state: 'free' } }), eu('nuts'))).toEqual({
      state: 'unknown',
      unknown: true,
    });
    expect(stateOf(food('food', labelled()), eu('nuts'))).toEqual({ state: 'free', unknown: false });
  });

  test('"contains nuts" is contained in nuts, and leaves almond alone open', () => {
    const mixed = said({ nuts: { state: 'contains' } });
    expect(stateOf(mixed, eu('nuts')).state).toBe('contains');
    expect(stateOf(mixed, anz('almond')).state).toBe('unknown');
    expect(stateOf(said({ nuts: { state: 'may' } }), anz('almond'))).toEqual({
      state: 'unknown',
      unknown: true,
    });
  });

  test('"free of nuts" frees the nuts it covers and says nothing of pine nut', () => {
    const nutless = said({ nuts: { state: 'free' } });
    expect(stateOf(nutless, eu('nuts')).state).toBe('free');
    expect(stateOf(nutless, anz('almond')).state).toBe('free');
    expect(stateOf(nutless, ca('nuts')).state).toBe('unknown');
    expect(stateOf(said({ nuts: { state: 'free' }, almond: { state: 'may' } }), eu('nuts')).state).toBe(
      'may',
    );
  });

  // Sulphites above 10 mg were asked for the EU list; of exactly 10 mg nobody has said anything.
  test('another list asks what the old one never asked', () => {
    const wine = said({ 'sulphites-above-10': { state: 'free' } });
    expect(stateOf(wine, eu('sulphites')).state).toBe('free');
    expect(stateOf(wine, anz('sulphites')).state).toBe('unknown');
    expect(stateOf(said({ 'sulphites-at-10': { state: 'contains' } }), eu('sulphites')).state).toBe(
      'unknown',
    );
  });
});

// Oats may contain wheat, and of rye nothing is said: rye is asked about. A label that says "may contain nuts" has said
// it of every nut and is not asked again.
test('under a may-contain, the label is asked for where it was not read to the end', () => {
  const asked = (allergens: object) => {
    const all = Object.entries({ ...labelled().allergens, ...allergens });
    const stated = Object.fromEntries(all.filter(([, entry]) => entry));
    const facts = factsOf([dish('bar', '1 portion', ['1 g oats']), food('oats', { allergens: stated })]);
    return unreadIn([facts.recipes.get('bar')!], facts).map(({ sentence }) => sentence);
  };
  expect(asked({ wheat: { state: 'may' }, rye: undefined })).toEqual([
    'Bar: gluten not known. Read the label of Oats.',
  ]);
  const nuts = Object.fromEntries(allergenList('eu').items[7]!.members.map((id) => [id, undefined]));
  expect(asked({ ...nuts, nuts: { state: 'may' } })).toEqual([]);
  expect(asked(nuts)).toEqual(['Bar: nuts not known. Read the label of Oats.']);
});

// Two recipes on each of twenty floors, each of both below: a million ways down. The state is found all the same, and
// what brings it in is named a dozen times at most.
test('a deep web of components is no work', () => {
  const floors = Array.from({ length: 20 }, (_, at) =>
    ['a', 'b'].map((side) =>
      dish(`${side}${at}`, '1 portion', at < 19 ? [`1 g @a${at + 1}`, `1 g @b${at + 1}`] : ['1 g milk']),
    ),
  );
  const facts = factsOf([...floors.flat(), food('milk', labelled({ contains: ['milk'] }))]);
  const started = performance.now();
  expect(cell(facts, 'a0', 'milk').state).toBe('contains');
  expect(ways(facts.recipes.get('a0')!, facts).length).toBeLessThanOrEqual(24);
  expect(performance.now() - started).toBeLessThan(1000);
});
