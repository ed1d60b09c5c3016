import fc from 'fast-check';
import { expect, test } from 'vitest';
import { judgeGuest } from '../../../src/core/diets.js';
import { guest } from '../../../src/core/facts/event.js';
import { type Ingredient, ingredient, traits } from '../../../src/core/facts/ingredient.js';
import { dish, factsOf } from '../small.js';

// Kiwi stands on no law's list, so only words, or the cook, tell of it.
const sources = fc.constantFrom('label', 'cook', 'reference');
const anyFood = (key: string): fc.Arbitrary<Ingredient> =>
  fc
    .record({
      name: fc.constantFrom('Kiwis, green', 'Fruit mix', 'Salt', 'Pears'),
      notBought: fc.constantFrom(false, false, false, true),
      labelText: fc.constantFrom('', '', 'Apple, KIWI purée', 'Kiwis', 'Apple, sugar'),
      labelDate: fc.constantFrom(null, '2026-01-05'),
      allergens: fc.dictionary(
        fc.constantFrom('milk', 'eggs', 'nuts'),
        fc.record({ state: fc.constantFrom('contains', 'may', 'free'), source: sources }),
      ),
      traits: fc.dictionary(fc.constantFrom(...traits), fc.constantFrom('yes', 'no', 'unknown')),
    })
    .map((more) => ingredient.parse({ key, ...more }));

const diet = (kind: string) => ({ key: 'kiwi-free', name: 'no kiwi', kind, avoidsIngredients: ['kiwi'] });
const verdictOf = (foods: readonly Ingredient[], kind: string, more: object) => {
  const kiwi = ingredient.parse({ key: 'kiwi', name: 'Kiwi' });
  const below = dish(
    'below',
    '1 portion',
    foods.map(({ key }) => `1 g ${key}`),
  );
  const facts = factsOf([kiwi, ...foods, below, dish('top', '1 portion', ['1 portion @below'])], {
    diets: [diet(kind)],
  });
  const ana = guest.parse({ key: 'ana', name: 'Ana', group: 'adults', ...more });
  return judgeGuest(ana, facts.recipes.get('top')!, facts).verdict;
};
const speaks = ({ name, labelText }: Ingredient) => /kiwi/i.test(`${name} ${labelText}`);
const isRead = ({ labelText, labelDate }: Ingredient) => labelText !== '' && labelDate !== null;
const isInCooksWord = ({ labelText, allergens }: Ingredient) => {
  const said = Object.values(allergens);
  return labelText === '' && said.length > 0 && said.every(({ source }) => source === 'cook');
};

test('who is allergic to what is on no list is told yes only by words read of this pack, or by the cook', () => {
  let told = 0;
  fc.assert(
    fc.property(
      fc.tuple(anyFood('a'), anyFood('b')),
      fc.constantFrom('allergen', 'medical'),
      fc.boolean(),
      (foods, kind, traces) => {
        const verdict = verdictOf(foods, kind, { diets: ['kiwi-free'], traces });
        if (foods.some(speaks)) expect(verdict).toBe('no');
        if (verdict !== 'yes' && verdict !== 'may') return;
        told++;
        for (const one of foods)
          expect(!speaks(one) && (one.notBought || isRead(one) || isInCooksWord(one))).toBe(true);
      },
    ),
    { numRuns: 1500 },
  );
  expect(told).toBeGreaterThan(20);
});

test('a dislike is never told yes by the words of a pack before, nor of what nobody said anything of', () => {
  fc.assert(
    fc.property(anyFood('a'), (one) => {
      if (verdictOf([one], 'choice', { avoids: ['kiwi'] }) !== 'yes') return;
      expect(speaks(one)).toBe(false);
      if (one.notBought) return;
      if (one.labelText !== '') expect(one.labelDate).not.toBeNull();
      else {
        const said = Object.values(one.traits).some((known) => known !== 'unknown');
        expect(Object.keys(one.allergens).length > 0 || said).toBe(true);
      }
    }),
    { numRuns: 600 },
  );
});
