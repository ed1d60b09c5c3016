import fc from 'fast-check';
import { expect, test } from 'vitest';
import published from '../../../shared/allergens.json' with { type: 'json' };
import { allergenList, type State, stateOf } from '../../../src/core/allergens.js';
import { type Ingredient, ingredient } from '../../../src/core/facts/ingredient.js';
import { type AllergenListId, allergenLists } from '../../../src/core/facts/kitchen.js';
import { type Marked, plainProduce, wholeLabelRead, withMarks } from '../../../src/core/label.js';
import { labelForgotten, labelReadAgain } from '../../../src/core/label-again.js';
import { labelOf } from '../../../src/core/label-entries.js';
import { withLabelRead } from '../../../src/core/label-marks.js';

const badness: Record<State, number> = { free: 0, unknown: 1, may: 2, contains: 3 };
const ids = [...published.substances, ...published.groups].map(({ id }) => id);
const stamp = { source: 'label', date: '2026-11-01', by: 'R.T.' } as const;
const anyEntry = fc.record({
  state: fc.constantFrom('contains', 'may', 'free', 'free', 'free'),
  source: fc.constantFrom('label', 'cook', 'reference'),
});
const anyFood: fc.Arbitrary<Ingredient> = fc
  .dictionary(fc.constantFrom(...ids), anyEntry, { maxKeys: ids.length })
  .map((allergens) => ingredient.parse({ key: 'food', name: 'Food', allergens }));
const anyList = fc.constantFrom(...allergenLists);
const anyState = fc.constantFrom('contains', 'may', 'free', 'unknown');

/** Every substance by itself and every entry of every list. */
const standing = (food: Ingredient) =>
  new Map(
    [
      ...published.substances.map(({ id }): [string, string[]] => [id, [id]]),
      ...allergenLists.flatMap((list) =>
        allergenList(list).items.map((item): [string, string[]] => [`${list} ${item.id}`, item.members]),
      ),
    ].map(([what, members]) => [what, stateOf(food, members)]),
  );
/** What a change betters. */
const bettered = (after: Ingredient, before: Ingredient): string[] => {
  const was = standing(before);
  return [...standing(after)]
    .filter(([what, { state }]) => badness[state] < badness[was.get(what)!.state])
    .map(([what]) => what);
};
/** The marks of a label's form as it is drawn. */
const asDrawn = (food: Ingredient, list: AllergenListId): Marked => {
  const entries = labelOf(food, allergenList(list));
  return {
    entries: Object.fromEntries(entries.map(({ item, state }) => [item.id, state])),
    states: Object.fromEntries(
      entries
        .flatMap(({ states, group }) => [...states, ...(group ? [group] : [])])
        .map(({ id, state }) => [id, state]),
    ),
  };
};

test('a label’s form saved as it was drawn betters nothing, under whatever list', () => {
  fc.assert(
    fc.property(anyFood, anyList, (food, list) => {
      const { allergens, conflicts } = withMarks(food, allergenList(list), asDrawn(food, list), stamp);
      expect(conflicts).toEqual([]);
      expect(bettered({ ...food, allergens }, food)).toEqual([]);
    }),
    { numRuns: 200 },
  );
});

test('what is marked as contained or maybe contained stands so, whatever else is marked', () => {
  const anyMarks = fc.record({
    entries: fc.dictionary(fc.constantFrom(...ids, 'sulphites'), anyState, { maxKeys: 30 }),
    states: fc.dictionary(fc.constantFrom(...ids), anyState, { maxKeys: 30 }),
  });
  fc.assert(
    fc.property(anyFood, anyList, anyMarks, (food, list, marked) => {
      const { allergens, conflicts } = withMarks(food, allergenList(list), marked, stamp);
      if (conflicts.length > 0) return;
      const now = { ...food, allergens };
      const asked = new Set(labelOf(food, allergenList(list)).map(({ item }) => item.id));
      for (const { id, members } of allergenList(list).items) {
        const wanted = marked.entries[id] ?? 'unknown';
        if (!asked.has(id) || (wanted !== 'contains' && wanted !== 'may')) continue;
        expect(badness[stateOf(now, members).state]).toBeGreaterThanOrEqual(badness[wanted]);
      }
    }),
    { numRuns: 200 },
  );
});

test('a label read to the end says free only of what its list asks and nothing named', () => {
  fc.assert(
    fc.property(anyFood, anyList, (food, list) => {
      const now = { ...food, allergens: wholeLabelRead(food, allergenList(list), stamp) };
      const asked = new Set(allergenList(list).items.flatMap(({ members }) => members));
      for (const { id } of published.substances) {
        const [was, is] = [stateOf(food, [id]), stateOf(now, [id])];
        if (was.state === 'contains' || was.state === 'may') expect(is.state).toBe(was.state);
        if (was.state === 'unknown' && !asked.has(id)) expect(is.state).toBe('unknown');
        const group = published.groups.find(({ members }) => members.includes(id));
        const named = group && ['contains', 'may'].includes(food.allergens[group.id]?.state ?? '');
        if (was.state === 'unknown' && named) expect(is.state).toBe('unknown');
      }
    }),
    { numRuns: 200 },
  );
});

test('a label forgotten, read again, or read by its words never betters what stood', () => {
  const words = fc.constantFrom(
    'Milk, flour',
    '**Nuts**, whey',
    'May contain gluten',
    'Free from milk',
    'Salt',
    '',
  );
  fc.assert(
    fc.property(anyFood, words, words, (food, first, then) => {
      expect(
        bettered({ ...food, ...labelReadAgain({ ...food, labelText: first }, '2026-11-02', '') }, food),
      ).toEqual([]);
      expect(bettered({ ...food, allergens: withLabelRead(food.allergens, first, '', stamp) }, food)).toEqual(
        [],
      );
      const { allergens } = labelForgotten(food);
      for (const { source } of Object.values(allergens)) expect(source).not.toBe('label');
      const again = withLabelRead(withLabelRead({}, first, '', stamp), then, first, stamp);
      expect(again).toEqual(withLabelRead({}, then, '', stamp));
    }),
    { numRuns: 200 },
  );
});

test('nobody’s word makes plain produce of what somebody said contains something', () => {
  fc.assert(
    fc.property(anyFood, anyList, (food, list) => {
      const before = labelOf(food, allergenList(list)).every(
        ({ state }) => state === 'free' || state === 'unknown',
      );
      if (!before) return;
      const now = { ...food, allergens: plainProduce(food, allergenList(list), 'R.T.') };
      for (const { id } of published.substances) {
        const was = stateOf(food, [id]).state;
        if (was === 'contains' || was === 'may') expect(stateOf(now, [id]).state).toBe(was);
      }
    }),
    { numRuns: 200 },
  );
});
