import { z } from 'zod';
import { date, key } from './common.js';

/** What the labels said that were last printed of a recipe, as a hash: whether they still hold can be told. */
export const printedLabel = z
  .strictObject({
    recipe: key.describe('What is in the packs.'),
    who: z.string().trim().min(1).max(120).describe('Who printed them.'),
    at: z.iso.datetime({ precision: 0 }).describe('When, to the second and in UTC: "2026-12-02T10:20:00Z".'),
    made: date.describe('The day they say it was made.'),
    useBy: date.nullable().describe('The day they say it is used by; null where it is written in by hand.'),
    fingerprint: z
      .string()
      .regex(/^[0-9a-f]{32}$/)
      .describe('A hash of all they said.'),
  })
  .describe('The last print of the labels of a recipe.')
  .meta({ id: 'printedLabel' });
export type PrintedLabel = z.infer<typeof printedLabel>;
