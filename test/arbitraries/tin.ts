import fc from 'fast-check';
import type { Tin } from '../../src/core/facts/recipe.js';
import { maybe } from './words.js';

const side = fc.oneof(
  fc.integer({ min: 10, max: 60 }).map(String),
  fc.integer({ min: 20, max: 99 }).map((n) => `${n}/3`),
  fc.integer({ min: 100, max: 399 }).map((n) => `${n / 10}`),
);
const rest = {
  unit: fc.constantFrom<Tin['unit'][]>('cm', 'in'),
  depth: maybe(side),
  count: fc.integer({ min: 1, max: 20 }),
};

/** A tin of any shape; the hole of a ring is smaller than any ring. */
export const anyTin: fc.Arbitrary<Tin> = fc.oneof(
  fc.record({ shape: fc.constant('round' as const), diameter: side, ...rest }),
  fc.record({ shape: fc.constant('square' as const), side, ...rest }),
  fc.record({ shape: fc.constant('rectangular' as const), length: side, width: side, ...rest }),
  fc.record({
    shape: fc.constant('ring' as const),
    diameter: side,
    hole: fc.constantFrom('3', '5/2', '4.5'),
    ...rest,
  }),
  fc.record({ shape: fc.constant('loaf' as const), length: side, width: side, ...rest }),
);
