import fc from 'fast-check';
import { cups } from '../../src/core/facts/kitchen.js';
import { type Recipe, recipe } from '../../src/core/facts/recipe.js';
import {
  anyAmount,
  anyMinutes,
  anyVolume,
  anyWeight,
  keptWords,
  keyed,
  keysOf,
  maybe,
  origin,
  type There,
  title,
} from './words.js';

const anyItem = ({ ingredients, recipes }: There) => {
  const items = [
    ...ingredients.map((key) => ({ ingredient: key })),
    ...recipes.map((key) => ({ component: key })),
  ];
  return items.length === 0 ? undefined : fc.constantFrom(...items);
};

const anyLines = (there: There) => {
  const item = anyItem(there);
  if (!item) return fc.constant([]);
  const straight = fc.record({
    amount: anyAmount,
    unit: fc.constantFrom('g', 'ml', 'each'),
    item,
    preparation: keptWords(20),
    stated: fc.constantFrom('usual', 'prepared', 'bought'),
  });
  const taste = fc.record({ amount: maybe(anyAmount), item, scales: fc.constant('taste') });
  return keyed(6, fc.oneof(straight, taste));
};

const anySteps = keysOf(5).chain((keys) =>
  fc.tuple(
    ...keys.map((key, at) =>
      fc
        .record({
          words: title,
          minutes: maybe(fc.nat(60)),
          minutesLongest: maybe(fc.integer({ min: 60, max: 200 })),
          attended: fc.boolean(),
          oven: maybe(fc.record({ heat: fc.integer({ min: -20, max: 280 }) })),
          portionsPerShelf: maybe(anyAmount),
          rings: fc.nat(4),
          after: fc
            .subarray(keys.slice(0, at))
            .map((steps) => steps.map((step) => ({ step, least: 5, most: 90 }))),
          servedWithin: maybe(anyMinutes),
          where: fc.constantFrom('home', 'venue', 'either'),
          daysAhead: fc.nat(5),
        })
        .map((fields) => ({ key, ...fields })),
    ),
  ),
);

const anyYield = fc.oneof(
  fc.record({ portions: anyAmount, weight: maybe(anyWeight), volume: maybe(anyVolume) }),
  fc.record({ weight: anyWeight }),
  fc.record({ volume: anyVolume }),
);

export const anyRecipe = (key: string, there: There): fc.Arbitrary<Recipe> =>
  fc
    .record({
      name: title,
      yield: anyYield,
      byPiece: fc.boolean(),
      cookingLoss: maybe(fc.nat(99).map(String)),
      cup: maybe(fc.constantFrom(...cups)),
      lines: anyLines(there),
      steps: anySteps,
      variantOf: there.recipes.length > 0 ? maybe(fc.constantFrom(...there.recipes)) : fc.constant(null),
      keepingDays: maybe(fc.nat(30)),
      note: keptWords(60),
      archived: fc.boolean(),
      origin,
    })
    .map((doc) => recipe.parse({ key, ...doc }));
