import fc from 'fast-check';
import { type LabelPhotograph, photographTypes } from '../../src/core/facts/label-photograph.js';
import { anyDate, keptWords } from './words.js';

/** How a picture of each type begins. */
export const beginnings: Record<LabelPhotograph['type'], readonly number[]> = {
  'image/jpeg': [0xff, 0xd8, 0xff, 0xe0],
  'image/png': [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a],
  'image/webp': [0x52, 0x49, 0x46, 0x46, 1, 0, 0, 0, 0x57, 0x45, 0x42, 0x50],
};

/** Photographs of the labels of some of these ingredients. */
export const anyPhotographs = (ingredients: readonly string[]): fc.Arbitrary<LabelPhotograph[]> =>
  fc.subarray([...ingredients]).chain((some) =>
    fc.tuple(
      ...some.map((ingredient) =>
        fc
          .record({
            ingredient: fc.constant(ingredient),
            taken: anyDate,
            pack: keptWords(20),
            type: fc.constantFrom(...photographTypes),
            rest: fc.uint8Array({ maxLength: 90 }),
          })
          .map(({ rest, ...one }) => ({
            ...one,
            bytes: Buffer.from([...beginnings[one.type], ...rest]).toString('base64'),
          })),
      ),
    ),
  );
