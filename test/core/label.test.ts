import { expect, test } from 'vitest';
import { allergenList, type State, stateOf } from '../../src/core/allergens.js';
import { askedByDiets } from '../../src/core/diets.js';
import { type Ingredient, ingredient } from '../../src/core/facts/ingredient.js';
import { labelState, plainProduce, wholeLabelRead, withMarks } from '../../src/core/label.js';
import { labelOf } from '../../src/core/label-entries.js';
import { exampleKitchen } from '../world.js';

const eu = allergenList('eu');
const stamp = { source: 'label', date: '2026-12-02', by: 'R.T.' } as const;
const of = (allergens: Record<string, State | Ingredient['allergens'][string]>): Ingredient =>
  ingredient.parse({
    key: 'x',
    name: 'X',
    allergens: Object.fromEntries(
      Object.entries(allergens).map(([id, one]) => [id, typeof one === 'string' ? { state: one } : one]),
    ),
  });
const marks = (
  one: Ingredient,
  entries: Record<string, State>,
  states: Record<string, State> = {},
  list = eu,
) => withMarks(one, list, { entries, states }, stamp);
const entry = (one: Ingredient, id: string, list = eu) =>
  labelOf(one, list).find(({ item }) => item.id === id)!;
const said = (allergens: Ingredient['allergens']) =>
  Object.fromEntries(Object.entries(allergens).map(([id, { state }]) => [id, state]));

test('a flour is marked: wheat is named, the other cereals stay not known until the whole label is read', () => {
  const { allergens } = marks(of({}), { gluten: 'contains', milk: 'may' }, { wheat: 'contains' });
  expect(said(allergens)).toEqual({ wheat: 'contains', milk: 'may' });
  const read = wholeLabelRead({ ...of({}), allergens }, eu, stamp);
  expect(read.rye).toEqual({ state: 'free', ...stamp });
  expect(read.milk).toEqual({ state: 'may', ...stamp });
  expect(labelState({ ...of({}), allergens: read }, eu)).toEqual({
    unknown: 0,
    read: { first: '2026-12-02', last: '2026-12-02' },
  });
});

test('a label that does not say which nuts stands for the group, and stays asked for each', () => {
  const { allergens } = marks(of({}), { nuts: 'contains' });
  expect(said(allergens)).toEqual({ nuts: 'contains' });
  const read = wholeLabelRead({ ...of({}), allergens }, eu, stamp);
  expect(read.nuts?.state).toBe('contains');
  expect(read.almond).toBeUndefined();
  expect(stateOf({ ...of({}), allergens: read }, entry(of({}), 'nuts').item.members).state).toBe('contains');
});

test('not listed writes free for each substance of a group and drops the group’s own entry', () => {
  const { allergens } = marks(of({ nuts: 'may' }), { nuts: 'free' });
  expect(allergens.nuts).toBeUndefined();
  expect(
    Object.keys(allergens)
      .filter((id) => allergens[id]!.state === 'free')
      .toSorted(),
  ).toEqual([...entry(of({}), 'nuts').item.members].toSorted());
});

test('marks that can’t both stand are named', () => {
  expect(marks(of({}), { nuts: 'free' }, { almond: 'contains' }).conflicts).toMatchObject([
    { entry: { id: 'nuts' }, substance: 'almond' },
  ]);
});

test('an entry worse than the substances named keeps its warning', () => {
  expect(said(marks(of({}), { nuts: 'contains' }, { almond: 'may' }).allergens)).toEqual({
    nuts: 'contains',
    almond: 'may',
  });
  expect(said(marks(of({}), { nuts: 'contains' }, { almond: 'contains' }).allergens)).toEqual({
    almond: 'contains',
  });
  expect(said(marks(of({}), { nuts: 'contains' }, { almond: 'free' }).allergens)).toEqual({
    nuts: 'contains',
    almond: 'free',
  });
});

test('a form sent back as it was drawn changes nothing, under any list', () => {
  const old = { source: 'cook', date: null, by: 'N.O.' } as const;
  const kinds: Ingredient[] = [
    of({}),
    of({ wheat: { state: 'contains', ...old }, rye: { state: 'free', ...old } }),
    of({ nuts: { state: 'contains', ...old }, almond: { state: 'free', ...old } }),
    of({ nuts: { state: 'may', ...old }, almond: { state: 'contains', ...old } }),
    of({ gluten: { state: 'contains', ...old } }),
    ...exampleKitchen().ingredients,
  ];
  for (const id of ['eu', 'us', 'ca', 'anz'] as const)
    for (const one of kinds) {
      const list = allergenList(id);
      const drawn = labelOf(one, list);
      const entries = Object.fromEntries(drawn.map(({ item, state }) => [item.id, state]));
      const states = Object.fromEntries(
        drawn.flatMap((row) =>
          [...row.states, ...(row.group ? [row.group] : [])].map(({ id, state }) => [id, state]),
        ),
      );
      expect(withMarks(one, list, { entries, states }, stamp)).toEqual({
        allergens: one.allergens,
        conflicts: [],
      });
    }
});

test('a group said to be free is written out for each, known as it was', () => {
  const one = of({ nuts: { state: 'free', source: 'cook', date: null, by: 'N.O.' } });
  const drawn = entry(one, 'nuts');
  expect(drawn.state).toBe('free');
  const { allergens } = marks(one, { nuts: 'free' });
  expect(allergens.almond).toEqual({ state: 'free', source: 'cook', date: null, by: 'N.O.' });
  expect(allergens.nuts).toBeUndefined();
});

test('a group named under another list can still be mended', () => {
  const one = of({ gluten: 'contains' });
  const us = allergenList('us');
  expect(entry(one, 'gluten', us).state).toBe('contains');
  expect(said(marks(one, { gluten: 'free', wheat: 'free' }, { wheat: 'free' }, us).allergens)).toMatchObject({
    wheat: 'free',
    triticale: 'free',
    rye: 'free',
  });
  expect(marks(one, { gluten: 'free' }, {}, us).allergens.gluten).toBeUndefined();
});

test('where no group holds an entry, its first substance stands for it', () => {
  expect(said(marks(of({}), { wheat: 'contains' }, {}, allergenList('us')).allergens)).toEqual({
    wheat: 'contains',
  });
});

test('what only a diet asks is asked beyond the list, and reading the whole label leaves it open', () => {
  // No Annex II entry covers pine nut, and "no nuts" avoids it; in the US barley, rye and oats need not be named.
  const beyond = (id: 'eu' | 'us' | 'ca' | 'anz') =>
    labelOf(of({}), allergenList(id))
      .filter((one) => one.beyond)
      .map(({ item }) => item.id);
  expect(beyond('eu')).toEqual(['pine-nut']);
  expect(beyond('us')).toEqual(['gluten', 'celery', 'mustard', 'sulphites-above-10', 'lupin', 'molluscs']);
  expect(beyond('ca')).toEqual(['celery', 'lupin']);
  expect(beyond('anz')).toEqual(['celery', 'mustard']);
  expect(wholeLabelRead(of({}), eu, stamp)['pine-nut']).toBeUndefined();
  expect(marks(of({}), { 'pine-nut': 'free' }).allergens['pine-nut']).toEqual({ state: 'free', ...stamp });
  for (const id of ['eu', 'us', 'ca', 'anz'] as const) {
    const asked = labelOf(of({}), allergenList(id)).flatMap(({ item, group, states }) => [
      ...states.map((one) => one.id),
      ...(group ? [group.id] : [item.id]),
    ]);
    expect([...askedByDiets].filter((one) => one !== 'nuts' && !asked.includes(one))).toEqual([]);
  }
});

test('nuts not said which, entered under another list, can be taken back where each nut is an entry', () => {
  const anz = allergenList('anz');
  const one = of({ nuts: 'contains' });
  expect(entry(one, 'nuts', anz)).toMatchObject({ state: 'contains', states: [], beyond: true });
  expect(marks(one, { nuts: 'free' }, {}, anz).allergens).toEqual({});
  expect(said(marks(one, { nuts: 'may' }, {}, anz).allergens)).toEqual({ nuts: 'may' });
});

test('plain produce is free in the cook’s word, of the list in force and of what diets ask', () => {
  const plain = plainProduce(of({ nuts: 'may' }), eu, 'R.T.');
  expect(labelState({ ...of({}), allergens: plain }, eu)).toEqual({ unknown: 0, read: undefined });
  expect(plain.milk).toEqual({ state: 'free', source: 'cook', date: null, by: 'R.T.' });
  expect(plain['pine-nut']).toEqual({ state: 'free', source: 'cook', date: null, by: 'R.T.' });
  expect(plain['sulphites-at-10']).toBeUndefined();
});
