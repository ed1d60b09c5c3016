import fc from 'fast-check';
import { cups } from '../../src/core/facts/kitchen.js';
import { type Recipe, recipe } from '../../src/core/facts/recipe.js';
import { anyLines } from './lines.js';
import { anyTin } from './tin.js';
import {
  anyAmount,
  anyMinutes,
  anyVolume,
  anyWeight,
  keptWords,
  keysOf,
  maybe,
  origin,
  type There,
  title,
} from './words.js';

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
          pan: maybe(anyAmount),
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
      tin: maybe(anyTin),
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
