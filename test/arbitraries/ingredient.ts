import fc from 'fast-check';
import { allergenIds } from '../../src/core/allergens.js';
import { type Ingredient, ingredient, traits } from '../../src/core/facts/ingredient.js';
import { anyAmount, anyDate, anyMeasure, anyMoney, keptWords, keyed, maybe, origin, title } from './words.js';

const anyAllergens = fc.dictionary(
  fc.constantFrom(...allergenIds),
  fc.record({ state: fc.constantFrom('contains', 'may', 'free'), date: maybe(anyDate), by: keptWords(10) }),
  { maxKeys: 6 },
);

const anyWeights = fc.uniqueArray(
  fc.record({
    unit: fc.constantFrom('each', 'clove', 'bunch'),
    grams: anyAmount,
    of: fc.constantFrom('prepared', 'bought'),
  }),
  { maxLength: 3, selector: ({ unit }) => unit },
);

const anyCookedYields = fc.uniqueArray(
  fc.record({
    name: fc.constantFrom('roasted', 'Boiled', 'braised, sliced'),
    yield: anyAmount,
    from: fc.constantFrom('bought', 'prepared'),
    source: keptWords(12),
  }),
  { maxLength: 3, selector: ({ name }) => name },
);

const anyPrice = fc.record({ date: anyDate, price: anyMoney, guess: fc.boolean() });

const anyPacks = keyed(
  3,
  fc.record({
    supplier: keptWords(12),
    brand: keptWords(12),
    code: keptWords(12),
    size: anyMeasure,
    prices: keyed(3, anyPrice),
  }),
);

export const anyIngredient = (key: string): fc.Arbitrary<Ingredient> =>
  fc
    .record({
      name: title,
      section: keptWords(12),
      notBought: fc.boolean(),
      frozen: fc.boolean(),
      packs: fc
        .tuple(anyPacks, fc.nat(3))
        .map(([packs, at]) => packs.map((pack, n) => ({ ...pack, preferred: n === at }))),
      edibleYield: maybe(anyAmount.map((share) => ({ yield: share }))),
      cookedYields: anyCookedYields,
      density: maybe(anyAmount.map((gramsPerMl) => ({ gramsPerMl }))),
      weights: anyWeights,
      allergens: anyAllergens,
      labelText: keptWords(60),
      labelDate: maybe(anyDate),
      traits: fc.dictionary(fc.constantFrom(...traits), fc.constantFrom('yes', 'no', 'unknown'), {
        maxKeys: 5,
      }),
      keeping: fc.record({ opened: maybe(fc.nat(90)), frozen: maybe(fc.nat(400)) }),
      note: keptWords(60),
      archived: fc.boolean(),
      origin,
    })
    .map((doc) => ingredient.parse({ key, ...doc }));
