import fc from 'fast-check';
import { expect, test } from 'vitest';
import { newIngredient, revisionsOf, withPrices } from '../../../../src/core/exchange/prices/apply.js';
import type { Choices } from '../../../../src/core/exchange/prices/match.js';
import { planOf } from '../../../../src/core/exchange/prices/plan.js';
import { idsApart, type ListRow } from '../../../../src/core/exchange/prices/rows.js';
import { type Ingredient, ingredient } from '../../../../src/core/facts/ingredient.js';
import { preferredPack } from '../../../../src/core/weighing.js';
import { anyIngredient } from '../../../arbitraries/index.js';

const names = ['Leek', 'Flour', 'Egg', 'Baby leek', 'Sea salt'];
const there: fc.Arbitrary<Ingredient[]> = fc
  .tuple(...['leek', 'flour', 'egg'].map(anyIngredient))
  .map((list) => list.map((one, i) => ingredient.parse({ ...one, name: names[i], archived: false })));

const rows: fc.Arbitrary<ListRow[]> = fc
  .uniqueArray(
    fc.record({
      id: fc.constantFrom('A', 'B', 'C', 'D', 'E', 'F'),
      name: fc.constantFrom(...names),
      size: fc.record({ amount: fc.constantFrom('1', '5', '12'), unit: fc.constantFrom('kg', 'each') }),
      price: fc.integer({ min: 1, max: 9999 }),
      date: fc.constantFrom('2026-11-01', '2036-02-03', '2019-05-05'),
      brand: fc.constantFrom('', 'Fell'),
      section: fc.constant(''),
    }),
    { maxLength: 12, selector: ({ id, date }) => `${id} ${date}` },
  )
  .map((list) => idsApart(list.map((row, i) => ({ ...row, line: i + 2 }))));

const choices: Choices = { D: { to: 'new', name: 'Quince' }, E: { to: 'ingredient', ingredient: 'egg' } };

test('a list taken over changes nothing the second time, and no line is priced at another pack than before', () => {
  fc.assert(
    fc.property(there, rows, (kitchen, listed) => {
      const plan = (ingredients: Ingredient[]) =>
        planOf(
          { rows: listed, refused: [] },
          { ingredients, kitchen: { cup: 'metric' }, list: { supplier: 'Harbour', leftOut: [] }, choices },
        );
      const now = new Map(kitchen.map((one) => [one.key, one]));
      for (const revision of revisionsOf(plan(kitchen))) {
        const before = revision.key === null ? undefined : now.get(revision.key);
        const doc = before
          ? withPrices(before, revision, 'Harbour')
          : newIngredient(revision, 'Harbour', (key) => now.has(key));
        expect(ingredient.parse(doc)).toEqual(doc);
        if (before && before.packs.length > 0)
          expect(preferredPack(doc)?.key).toBe(preferredPack(before)?.key);
        now.set(doc.key, doc);
      }
      const again = plan([...now.values()]);
      expect([again.fresh, again.changed, again.older]).toEqual([[], [], []]);
      const counted = [plan(kitchen), again].map(
        ({ fresh, changed, older, same, unmatched, leftOut, refused }) =>
          [fresh, changed, older, same, unmatched, leftOut, refused].reduce(
            (sum, list) => sum + list.length,
            0,
          ),
      );
      expect(counted).toEqual([listed.length, listed.length]);
    }),
    { numRuns: 300 },
  );
});
