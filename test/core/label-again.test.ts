import { expect, test } from 'vitest';
import { type Ingredient, ingredient } from '../../src/core/facts/ingredient.js';
import { labelForgotten, labelInDoubt, labelReadAgain, packOfLabel } from '../../src/core/label-again.js';

const cheddar = ingredient.parse({
  key: 'cheddar',
  name: 'Cheddar',
  packs: [
    { key: 'block', brand: 'Hay Loft', size: { amount: '5', unit: 'kg' }, preferred: true },
    { key: 'piece', brand: 'Low Barn', size: { amount: '250', unit: 'g' } },
  ],
  allergens: {
    milk: { state: 'contains', source: 'label', date: '2026-11-20', by: 'R.T.' },
    eggs: { state: 'free', source: 'cook', by: 'R.T.' },
  },
});
const packs = (change: (packs: Ingredient['packs']) => unknown) => {
  const after = structuredClone(cheddar);
  change(after.packs);
  return after;
};

test('another brand, or another pack preferred, puts the label in doubt', () => {
  expect(
    labelInDoubt(
      cheddar,
      packs(([block]) => Object.assign(block!, { brand: 'Stile End' })),
    ),
  ).toBe(1);
  const other = packs(([block, piece]) => {
    block!.preferred = false;
    piece!.preferred = true;
  });
  expect(labelInDoubt(cheddar, other)).toBe(1);
  expect(
    labelInDoubt(
      cheddar,
      packs((all) => all.shift()),
    ),
  ).toBe(1);
});

test('size, supplier, price, spacing of the brand or a further pack do not', () => {
  const size = packs(([block]) =>
    Object.assign(block!, { size: { amount: '4', unit: 'kg' }, supplier: 'Dairy' }),
  );
  expect(labelInDoubt(cheddar, size)).toBe(0);
  expect(
    labelInDoubt(
      cheddar,
      packs(([block]) => Object.assign(block!, { brand: ' hay  loft' })),
    ),
  ).toBe(0);
  const more = packs((all) => all.push({ ...cheddar.packs[1]!, key: 'tub', brand: 'Stile End' }));
  expect(labelInDoubt(cheddar, more)).toBe(0);
});

test('where no brand is said, another supplier may sell another product', () => {
  const from = (supplier: string) => packs(([block]) => Object.assign(block!, { brand: '', supplier }));
  expect(labelInDoubt(from('Low Barn'), from('Stile End'))).toBe(1);
  expect(labelInDoubt(from('Low Barn'), from(' low  barn'))).toBe(0);
  expect(labelInDoubt(from(''), from('Stile End'))).toBe(0);
});

test('no pack left, or none of several preferred, leaves open which label counts', () => {
  expect(labelInDoubt(cheddar, { ...cheddar, packs: [] })).toBe(1);
  const unsaid = packs(([block]) => Object.assign(block!, { preferred: false }));
  expect(labelInDoubt(cheddar, unsaid)).toBe(1);
  const one = { ...cheddar, packs: [{ ...cheddar.packs[0]!, preferred: false }] };
  expect(labelInDoubt(one, unsaid)).toBe(1);
  expect(labelInDoubt({ ...cheddar, packs: [] }, cheddar)).toBe(0);
});

test('of a pack whose label is not read, no fact that diets turn on is a no any more', () => {
  const traits = { rennet: 'no', dairy: 'yes', gelatine: 'unknown' } as const;
  const { traits: left } = labelForgotten({ ...cheddar, traits });
  expect(left).toEqual({ dairy: 'yes' });
});

test('forgetting a label keeps the cook’s word; reading it again dates it', () => {
  const forgotten = labelForgotten(cheddar);
  expect(Object.keys(forgotten.allergens)).toEqual(['eggs']);
  expect(forgotten.labelDate).toBeNull();
  const again = labelReadAgain({ ...cheddar, labelText: 'Milk' }, '2026-12-02', 'N.O.');
  expect(again.allergens.milk).toEqual({
    state: 'contains',
    source: 'label',
    date: '2026-12-02',
    by: 'N.O.',
  });
  expect(again.allergens.eggs).toEqual(cheddar.allergens.eggs);
  expect(again.labelDate).toBe('2026-12-02');
});

test('words of a label are in doubt as what was marked from it is, and amounts never are', () => {
  const worded = { ...cheddar, allergens: {}, labelText: 'Milk', labelDate: '2026-11-20' };
  expect(labelInDoubt(worded, { ...worded, packs: [cheddar.packs[1]!] })).toBe(1);
  const before = { ...worded, allergens: cheddar.allergens };
  expect({ ...before, ...labelForgotten(before) }).toEqual({
    ...before,
    allergens: { eggs: cheddar.allergens.eggs },
    labelDate: null,
  });
});

test('a photograph knows its pack by key and brand', () => {
  expect(packOfLabel(cheddar)).toBe('block hay loft');
  expect(packOfLabel(ingredient.parse({ key: 'salt', name: 'Salt' }))).toBe('');
});
